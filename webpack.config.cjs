/*
 * Three scripts from two builds:
 *   functions.js  every worksheet function for Excel, alone and small (FUNCTIONS_ONLY drops help and examples)
 *   taskpane.js   the pane in Excel
 *   browser.js    the browser workbook: the same pane beside the embedded grid, which loads by itself, later
 *
 *   webpack --env baseUrl=https://your.host/path/   where the built files will stand
 *   webpack --env officeCdn                          office.js from Microsoft's network instead of the local copy
 *   webpack --env errorsAsText                       an error inside a spill as its sentence (functions/excel.ts)
 *   webpack serve --env http                         http instead of https: enough for the browser workbook
 */
const path = require("node:path");
const webpack = require("webpack");
const CopyPlugin = require("copy-webpack-plugin");
const HtmlPlugin = require("html-webpack-plugin");
const MinimizerPlugin = require("minimizer-webpack-plugin");
const { LicenseWebpackPlugin } = require("license-webpack-plugin");

const DEVELOPMENT_URL = "https://localhost:3000/";
const OFFICE_CDN = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";
const officeFolder = path.join(path.dirname(require.resolve("@microsoft/office-js/package.json")), "dist");

/* The files of office.js that Excel asks for; o15apptofilemappingtable.js only where no host is found, but without it
   Office.onReady would never answer. */
const officeFiles = [
  "office.js",
  "o15apptofilemappingtable.js",
  "excel-web-16.00.js",
  "excel-win32-16.01.js",
  "excel-mac-16.00.js",
  "en-us/office_strings.js",
];

/* Microsoft's licence forbids changing these files: `minimized` keeps the minifier away from them. */
const unchanged = { minimized: true };

/*
 * esbuild makes the pages' 18 MB small in 3 seconds where terser took a minute and a half. functions.js keeps terser,
 * webpack's own: it also takes out the data that no function reads, and that script is small. The grid's ready-made
 * modules are minified this once.
 */
const withEsbuild = new MinimizerPlugin({
  minify: MinimizerPlugin.esbuildMinify,
  minimizerOptions: { target: "es2022", charset: "utf8", legalComments: "eof" },
  parallel: false,
});

/* What stands in for a module: its script as text. */
const script = (text) => `data:text/javascript,${encodeURIComponent(text)}`;

/*
 * Parts of the grid (0.25.1) that a sheet can never ask for, each with what stands in its place. The grid's engine for
 * pictures lays out whole documents too; a cell never breaks a word and never reads a font's own file.
 */
async function leftOutOfGrid() {
  /* Tables of 1,600 modules, put together at every start into three patterns: they are put together here, once. */
  const { letters, punctuations, all } = await import("cjk-regex");
  const patterns = Object.entries({ letters, punctuations, all }).map(
    ([name, kind]) => `export const ${name} = () => ({ toRegExp: () => ${kind().toRegExp()} });`,
  );
  return [
    /* Where words may break, in 77 languages: every file beside engine-render's own. It takes none for unknown. */
    [/^\.\/[\w-]+\.js$/, ""],
    /* Which language a text is in, asked for those tables alone. */
    [/^franc-min$/, 'export const franc = () => "und";'],
    /* Reads the files of fonts: no part of the grid hands it one. */
    [/^opentype\.js$/, "export const parse = undefined;"],
    [/^cjk-regex$/, patterns.join("")],
  ].map(
    ([request, text]) =>
      new webpack.NormalModuleReplacementPlugin(request, (asked) => {
        if (asked.context.includes(path.join("@univerjs", "engine-render"))) asked.request = script(text);
      }),
  );
}

/* Each text once, under the names of all packages that it covers: forty of them carry the same eleven kilobytes. */
function licencesOnce(modules) {
  const names = new Map();
  for (const { name, packageJson, licenseId, licenseText } of modules) {
    const text = (licenseText || "").trim();
    const heading = [name || packageJson.name, licenseId].filter(Boolean).join(" ");
    names.set(text, [...(names.get(text) || []), heading]);
  }
  return [...names].map(([text, covered]) => `${covered.sort().join("\n")}\n\n${text}\n`).join("\n\n");
}

module.exports = async (env = {}, argv = {}) => {
  const development = argv.mode === "development";
  const baseUrl = env.baseUrl || DEVELOPMENT_URL;
  if (!baseUrl.startsWith("https://") || !baseUrl.endsWith("/")) {
    throw new Error("baseUrl must begin with https:// and end with /");
  }
  /* Addresses, and the origin alone where the manifest names the domain. */
  const withBaseUrl = (content) =>
    content
      .toString()
      .replaceAll(DEVELOPMENT_URL, baseUrl)
      .replaceAll(new URL(DEVELOPMENT_URL).origin, new URL(baseUrl).origin);
  const officeSource = env.officeCdn ? OFFICE_CDN : "office/office.js";
  const serving = Boolean(process.env.WEBPACK_SERVE);
  const https = serving && !env.http ? await require("office-addin-dev-certs").getHttpsServerOptions() : null;

  const common = {
    mode: argv.mode || "production",
    target: ["web", "es2022"],
    /* The pages' own scripts have maps while somebody works on them (below). */
    devtool: false,
    output: { path: path.resolve(__dirname, "dist"), filename: "[name].js", chunkFilename: "[name].js" },
    resolve: { extensions: [".ts", ".tsx", ".js"] },
    module: {
      rules: [
        {
          test: /\.tsx?$/,
          exclude: /node_modules/,
          loader: "ts-loader",
          /* Only what the scripts import is read, not the tests too: tsc checks types (npm test). */
          options: { transpileOnly: true, onlyCompileBundledFiles: true, compilerOptions: { noEmit: false } },
        },
        { test: /\.css$/, type: "css/auto" },
        /* Its imports on demand ask for what is left out only: no file of their own for nothing. */
        { test: /@univerjs[\\/]engine-render/, parser: { dynamicImportMode: "eager" } },
      ],
    },
    experiments: { css: true },
    performance: { hints: false },
    stats: "errors-warnings",
    /* Builds after the first one take seconds; the cache lies in node_modules/.cache. */
    cache: { type: "filesystem", buildDependencies: { config: [__filename] } },
  };

  const functions = {
    ...common,
    name: "functions",
    entry: { functions: "./functions/excel.ts" },
    plugins: [
      new webpack.DefinePlugin({ FUNCTIONS_ONLY: "true", ERRORS_AS_TEXT: JSON.stringify(Boolean(env.errorsAsText)) }),
    ],
  };

  const pages = {
    ...common,
    name: "pages",
    entry: {
      taskpane: "./taskpane/excel.tsx",
      browser: "./taskpane/browser.tsx",
      reference: "./functions/reference-search.ts",
    },
    /* What a former build left there is not served on; functions.js is the other build's. */
    output: {
      ...common.output,
      cssFilename: "[name].css",
      cssChunkFilename: "[name].css",
      clean: { keep: /^functions\.js/ },
    },
    /* The shortest names inside the scripts: taskpane.js has a limit of 90 KB (tests/bench/jobs/page.ts). */
    optimization: {
      /* The page and its thread of packages both read workbooks: one file for both. */
      splitChunks: {
        minSize: 10_000,
        cacheGroups: { workbooks: { test: /[\\/]node_modules[\\/]hucre[\\/]/, name: "workbooks", chunks: "async" } },
      },
      moduleIds: "size",
      mangleExports: "size",
      minimize: development ? false : { javascript: false },
      minimizer: [withEsbuild, "..."],
    },
    plugins: [
      /* The guide fetches what functions say of themselves as data (functions/documentation.ts). */
      new webpack.DefinePlugin({ FUNCTIONS_ONLY: "true" }),
      /* Citations belong to that data too; nothing else reads them, or functions.js could not do without them. */
      new webpack.NormalModuleReplacementPlugin(/^\.\.\/sources$/, script("export const sources = {};")),
      ...(await leftOutOfGrid()),
      ...(development ? [new webpack.SourceMapDevToolPlugin({ filename: "[file].map", exclude: /^vendors/ })] : []),
      new HtmlPlugin({
        filename: "taskpane.html",
        template: "./taskpane/taskpane.html",
        chunks: ["taskpane"],
        templateParameters: { officeSource, officeOrigin: env.officeCdn ? new URL(OFFICE_CDN).origin : "" },
      }),
      /* The licence texts of everything bundled, in one file beside the scripts. */
      new LicenseWebpackPlugin({
        perChunkOutput: false,
        outputFilename: "third-party-licenses.txt",
        renderLicenses: licencesOnce,
        stats: { warnings: false, errors: true },
      }),
      new HtmlPlugin({ filename: "index.html", template: "./taskpane/index.html", chunks: ["browser"] }),
      new CopyPlugin({
        patterns: [
          { from: "taskpane/assets", to: "assets", globOptions: { ignore: ["**/*.svg", "**/*.ts", "**/*.mjs"] } },
          { from: "functions/generated/functions.json", transform: withBaseUrl },
          { from: "functions/generated/reference.html" },
          { from: "functions/reference.css" },
          { from: "docs/self-checking.xlsx" },
          { from: "manifest.xml", transform: withBaseUrl },
          ...(env.officeCdn
            ? []
            : officeFiles.map((file) => ({
                from: file,
                to: `office/${file}`,
                context: officeFolder,
                info: unchanged,
              }))),
        ],
      }),
    ],
    devServer: {
      host: "localhost",
      port: 3000,
      static: false,
      /* The page's content security policy stays strict: no overlay, no reloading by injected code. */
      client: { overlay: false },
      headers: { "Access-Control-Allow-Origin": "*" },
      server: https ? { type: "https", options: https } : "http",
    },
  };
  return [functions, pages];
};
