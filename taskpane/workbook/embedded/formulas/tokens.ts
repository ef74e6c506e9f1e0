export * from "../../formula/tokens";
