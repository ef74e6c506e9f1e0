/** Builds a test page into a folder of its own, with the same loaders as the product. */
import { mkdtemp } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import HtmlPlugin from "html-webpack-plugin";
import webpack from "webpack";

const here = (file: string) => fileURLToPath(new URL(file, import.meta.url));

/** @returns the folder in which index.html stands */
export async function buildPage(name: "pane-page" | "grid-page"): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), `${name}-`));
  const compiler = webpack({
    mode: "production",
    target: ["web", "es2022"],
    entry: { page: here(`${name}/page.tsx`) },
    output: { path: folder, filename: "[name].js", cssFilename: "[name].css" },
    resolve: { extensions: [".ts", ".tsx", ".js"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          exclude: /node_modules/,
          loader: "ts-loader",
          options: { transpileOnly: true, compilerOptions: { noEmit: false } },
        },
        { test: /\.css$/, type: "css/auto" },
      ],
    },
    experiments: { css: true },
    performance: { hints: false },
    optimization: { minimize: false },
    plugins: [new HtmlPlugin({ filename: "index.html", template: here(`${name}/page.html`) })],
  });
  await new Promise<void>((resolve, reject) =>
    compiler.run((error, stats) => {
      if (error) return reject(error);
      if (stats?.hasErrors()) return reject(new Error(stats.toString("errors-only")));
      compiler.close(() => resolve());
    }),
  );
  return folder;
}
