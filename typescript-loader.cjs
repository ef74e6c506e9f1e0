/** A webpack loader: a module of ours without its types, by esbuild. Types are for tsc to check (npm test). */
const { transform } = require("esbuild");

module.exports = function (source) {
  const done = this.async();
  const options = {
    loader: this.resourcePath.endsWith(".tsx") ? "tsx" : "ts",
    sourcefile: this.resourcePath,
    sourcemap: this.sourceMap ? "external" : false,
    target: "es2022",
    jsx: "automatic",
    charset: "utf8",
  };
  transform(source, options).then(({ code, map }) => done(null, code, map ? JSON.parse(map) : undefined), done);
};
