export * from "../../formula/structured";
