export * from "../../../../src/formula/tokens";
