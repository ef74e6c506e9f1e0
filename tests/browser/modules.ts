/** Our own modules for a page that Microsoft's library runs in: one script, made when a test asks for it. */
import { fileURLToPath } from "node:url";
import { build } from "esbuild";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/**
 * @param source a module that may import others by their place in the house: "./src/index"
 * @returns a script that a page runs as it stands
 */
export async function asScript(source: string, folder = ""): Promise<string> {
  const { outputFiles } = await build({
    stdin: { contents: source, resolveDir: ROOT + folder, loader: "ts" },
    bundle: true,
    write: false,
    format: "iife",
    target: "es2022",
    logLevel: "error",
  });
  return outputFiles[0]!.text;
}
