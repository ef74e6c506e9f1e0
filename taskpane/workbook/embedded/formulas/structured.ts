export * from "../../../../src/formula/structured";
