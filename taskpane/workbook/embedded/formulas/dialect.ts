export { fromFile, toFile } from "../../../../src/formula/file-spelling";
export { callsOurs } from "../../../../src/formula/ours";
