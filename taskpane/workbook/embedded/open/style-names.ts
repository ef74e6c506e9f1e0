/** Names of styles that we make ourselves: an opened style, and the number format that was meant to differ. */

/** Opened styles are named "xf12", so a space tells the two apart; the engine's own names are short codes. */
export const formattedName = (id: string | null, format: string): string => `${id ?? "plain"} ${format}`;

/** The number format was asked for; the engine also hands formats on to results by itself, which nobody asked for. */
export const isFormatted = (id: string): boolean => id.includes(" ");
