/** Serves dist/ as a hospital's static host would, or files that a test has made, on a free port of this machine. */
import { readFile } from "node:fs/promises";
import { createServer } from "node:http";
import type { AddressInfo } from "node:net";
import { extname, join, normalize } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES: Record<string, string> = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".css": "text/css; charset=utf-8",
  ".json": "application/json",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".xml": "application/xml",
  ".xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
};

export interface Served {
  /** Ends with "/". */
  readonly url: string;
  close(): Promise<void>;
}

/** @param find what stands at a path such as "/index.html"; refuses where nothing does */
async function serve(find: (path: string) => Promise<string | Uint8Array>): Promise<Served> {
  const server = createServer((request, response) => {
    const path = normalize(decodeURIComponent(new URL(request.url ?? "/", "http://x").pathname));
    const file = path.endsWith("/") ? `${path}index.html` : path;
    find(file).then(
      (bytes) => {
        response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream" });
        response.end(bytes);
      },
      () => {
        response.writeHead(404);
        response.end();
      },
    );
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    close: () =>
      new Promise((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

export const serveFolder = (folder: string): Promise<Served> => serve((path) => readFile(join(folder, path)));

/** @param files by their names, index.html among them */
export const serveFiles = (files: Readonly<Record<string, string>>): Promise<Served> =>
  serve(async (path) => {
    const file = files[path.slice(1)];
    if (file === undefined) throw new Error(`nothing at ${path}`);
    return file;
  });

/** The built page; `npm run build` must have run. */
export const serveDist = (): Promise<Served> => serveFolder(fileURLToPath(new URL("../../dist/", import.meta.url)));
