export const XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

/** Hands bytes to the browser's downloads. Nothing is sent anywhere. */
export function download(bytes: Uint8Array, name: string, type: string): void {
  const url = URL.createObjectURL(new Blob([bytes as Uint8Array<ArrayBuffer>], { type }));
  const link = document.createElement("a");
  link.href = url;
  link.download = name;
  link.click();
  /* The browser reads the address after the click has returned. */
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
}
