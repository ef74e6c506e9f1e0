/**
 * Formulas as trees. The grammar is that of ECMA-376 part 1, 18.17.2; precedence is Microsoft's page "Calculation
 * operators and precedence in Excel". Examples marked so stand on those pages.
 */
import { describe, expect, it } from "vitest";
import { parse, read } from "../../../src/formula/parse";
import { pieces, type Node } from "../../../src/formula/tree";
import { CellError } from "../../../src/worksheet/error";

/** The tree with all brackets written: "(a+(b*c))"; kinds that could be mistaken are marked. */
function drawn(node: Node): string {
  switch (node.is) {
    case "operator": {
      const [one, ...others] = node.parts.map(drawn);
      if (node.sign === "()") return `(${one} called with ${others.join(" and ")})`;
      if (node.sign === "%" || node.sign === "#") return `(${one}${node.sign})`;
      return others.length === 0 ? `(${node.sign}${one})` : `(${one}${node.sign}${others[0]})`;
    }
    case "call":
      return `${node.name}[${node.args.map(drawn).join("; ")}]`;
    case "reference":
      return `<${node.text}>`;
    case "nothing":
      return "nothing";
    case "text":
      return `'${node.value}'`;
    case "unknown":
      return "?";
    default:
      return node.text;
  }
}

describe("operators", () => {
  it.each([
    // "Calculation operators and precedence": =5+2*3 is 11, =(5+2)*3 is 21
    ["=5+2*3", "(5+(2*3))"],
    ["=(5+2)*3", "((5+2)*3)"],
    // the same page: negation before percent, then ^, then * and /, then + and -, then &, then comparison
    ["=-2^2", "((-2)^2)"],
    ["=2^3^2", "((2^3)^2)"],
    ["=2^-1", "(2^(-1))"],
    ["=-50%", "(-(50%))"],
    ["=10%%", "((10%)%)"],
    ['="a"&1+2="a3"', "(('a'&(1+2))='a3')"],
    ["=1<=2<>3>=4", "(((1<=2)<>3)>=4)"],
    ["=1--1", "(1-(-1))"],
    ["=6/2*3-4", "(((6/2)*3)-4)"],
    [" = 1 + 2 ".trim(), "(1+2)"],
    ["=1E-5+2.5E+3+.5+7.", "(((1E-5+2.5E+3)+.5)+7.)"],
  ])("%s", (formula, tree) => expect(drawn(parse(formula))).toBe(tree));
});

describe("a long sum", () => {
  // as long as Excel lets a formula be (8,192 characters), each sign one level deeper
  it("is taken apart", () => expect(pieces(parse(`=${"1+".repeat(4000)}1`))).toHaveLength(8001));
});

describe("references", () => {
  it.each([
    // "Calculation operators": B5:B15; SUM(B5:B15,D5:D15); B7:D7 C6:C8
    ["=B5:B15", "<B5:B15>"],
    ["=SUM(B5:B15,D5:D15)", "SUM[<B5:B15>; <D5:D15>]"],
    ["=B7:D7 C6:C8", "(<B7:D7> <C6:C8>)"],
    ["=SUM((B5:B15,D5:D15))", "SUM[(<B5:B15>,<D5:D15>)]"],
    // ECMA-376 part 1, 18.17.2.3
    ["=$A$1+Sheet1!B2+'My sheet'!C3", "((<$A$1>+<Sheet1!B2>)+<'My sheet'!C3>)"],
    ["=SUM(Sheet1:Sheet3!A1)", "SUM[<Sheet1:Sheet3!A1>]"],
    ["=SUM('Sheet 1:Sheet 3'!A1:B2)", "SUM[<'Sheet 1:Sheet 3'!A1:B2>]"],
    ["=SUM(A:C)+SUM(3:7)", "(SUM[<A:C>]+SUM[<3:7>])"],
    ["=[1]Sheet1!A1+[1]!Total", "(<[1]Sheet1!A1>+<[1]!Total>)"],
    ["='C:\\[Book.xlsx]It''s'!$A$1", "<'C:\\[Book.xlsx]It''s'!$A$1>"],
    // ECMA-376 part 1, 18.17.6 (structured references); Microsoft: "Using structured references with Excel tables"
    ["=DeptSales[[#Totals],[Sales Amount]]", "<DeptSales[[#Totals],[Sales Amount]]>"],
    ["=[@[% Commission]]*[@Region]", "(<[@[% Commission]]>*<[@Region]>)"],
    ["=DeptSales[[Sales Person]:[Region]]", "<DeptSales[[Sales Person]:[Region]]>"],
    ["=T['#Item]+1", "(<T['#Item]>+1)"],
    ["=A1:INDEX(A:A,3)", "(<A1>:INDEX[<A:A>; 3])"],
    ["=INDEX(A:A,2):A9", "(INDEX[<A:A>; 2]:<A9>)"],
    ["=Sheet1!A1:Sheet1!B2", "<Sheet1!A1:Sheet1!B2>"],
    ["=A1#", "(<A1>#)"],
    ["=SUM(Sheet1!A1#)", "SUM[(<Sheet1!A1>#)]"],
    ["=@A1:A9", "(@<A1:A9>)"],
    ["=Sheet1!#REF!+#REF!", "(<Sheet1!#REF!>+#REF!)"],
  ])("%s", (formula, tree) => expect(drawn(parse(formula))).toBe(tree));

  it.each([
    ["=XFD1048576", "<XFD1048576>"],
    // beyond the sheet, and so names
    ["=XFE1", "XFE1"],
    ["=A1048577", "A1048577"],
    ["=_name.1+Größe\\x", "(_name.1+Größe\\x)"],
  ])("%s ends at the edge of the sheet", (formula, tree) => expect(drawn(parse(formula))).toBe(tree));
});

describe("calls and constants", () => {
  it.each([
    ["=IF(A1,,3)", "IF[<A1>; nothing; 3]"],
    ["=F( )", "F[]"],
    ["=F(,)", "F[nothing; nothing]"],
    ["=SUM (1)", "SUM[1]"],
    ['=TUBE.FRTOMM("14"" Fr")', "TUBE.FRTOMM['14\" Fr']"],
    ["=LAMBDA(x,x+1)(3)", "(LAMBDA[x; (x+1)] called with 3)"],
    ["=true", "true"],
    ["=#DIV/0!+1", "(#DIV/0!+1)"],
  ])("%s", (formula, tree) => expect(drawn(parse(formula))).toBe(tree));

  it("arrays hold constants, row by row", () => {
    const node = parse('={1,-2.5;"a;b",TRUE;#N/A,+3}') as Node & { readonly is: "array" };
    expect(node.rows).toEqual([
      [1, -2.5],
      ["a;b", true],
      [new CellError("#N/A"), 3],
    ]);
  });

  it("each piece keeps its own words", () => {
    const texts = pieces(parse("=IF( A1 > 2 , (B2+1) , x )")).map(({ text }) => text);
    expect(texts).toEqual(["IF( A1 > 2 , (B2+1) , x )", "A1 > 2", "A1", "2", "(B2+1)", "B2", "1", "x"]);
  });
});

describe("what cannot be read says where", () => {
  it.each([
    ["=1+", "value missing", 3],
    ["=", "empty", 1],
    ['="abc', "not closed", 1],
    ["='My sheet!A1", "not closed", 1],
    ["=T[Col", "not closed", 2],
    ["=A1 A2 (((", "value missing", 10],
    ["=SUM(A1", "brackets", 4],
    ["=(1+2", "brackets", 1],
    ["=1+2)", "brackets", 4],
    ["=1 2", "operator missing", 3],
    ["=SUM(1 2)", "operator missing", 7],
    ["=cmd|' /C calc'!A0", "operator missing", 4],
    ["=12abc", "word", 1],
    ["=*3", "value missing", 1],
    ["=1,2", "operator missing", 2],
    ["={1,2;3}", "array", 1],
    ["={A1}", "array", 2],
    ["='Old list'", "value missing", 11],
    ["=A1:", "value missing", 4],
    ["=Sheet1!", "value missing", 8],
    ["=A1;B1", "operator missing", 3],
  ])("%s", (formula, is, at) => {
    expect(read(formula)).toEqual({ fault: { is, at } });
    expect(parse(formula).is).toBe("unknown");
  });

  it("brackets without end do not overflow", () => {
    expect(read("=" + "(".repeat(8000) + "1")).toMatchObject({ fault: { is: "too deep" } });
    expect(read("=" + "-".repeat(8000) + "1")).toMatchObject({ fault: { is: "too deep" } });
    expect(read("=" + "F(".repeat(8000))).toMatchObject({ fault: { is: "too deep" } });
  });
});
