/** What every job on somebody's own list says of it. */
import { inQuotes } from "../../texts/pieces";

export const twoCalled = (header: string): string =>
  `Two columns are called ${inQuotes(header)}. Give one of them another name, then look again.`;

export const sheetProtected = (name: string): string =>
  `The sheet ${inQuotes(name)} is protected. Take the protection off, then look again.`;
