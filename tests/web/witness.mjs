// HyperFormula, spoken to in lines of JSON: one request a line on standard input, one answer a line
// on standard output. It knows a workbook as rows of values; reading files is hyperformula.py's part.
// Rows and columns count from 0. A text is a text; what is to be typed, such as a formula, is {typed}.

import { createInterface } from "node:readline";
import { HyperFormula } from "hyperformula";

// HyperFormula's own settings are those of no spreadsheet program. None of these works anything out.
const OPTIONS = {
  licenseKey: "gpl-v3",
  useArrayArithmetic: true, // SUMPRODUCT((a="x")*b) is an error without it
  evaluateNullToZero: true, // a formula that only names an empty cell gives 0
  smartRounding: false, // else ten digits are handed over, and numbers close to each other are equal
  accentSensitive: true, // "é" is not "e"
  parseDateTime: () => undefined, // a text is no date, however much it looks like one,
  currencySymbol: [], // and no money
  undoLimit: 0, // nobody undoes, and it would keep every change
};

// NORMSDIST has one argument. HyperFormula takes the name for its NORM.S.DIST, which wants to be told
// that the sum is meant and not the density. It is told so here, and computes; this adds no mathematics.
class OneArgument extends HyperFormula.getFunctionPlugin("NORM.S.DIST") {
  sum(call, state) {
    const told = { type: "NUMBER", value: 1 };
    return this.evaluateAst({ ...call, procedureName: "NORM.S.DIST", args: [...call.args, told] }, state);
  }
}
OneArgument.aliases = {};
OneArgument.implementedFunctions = { NORMSDIST: { method: "sum", parameters: [{ argumentType: "NUMBER" }] } };
HyperFormula.registerFunction("NORMSDIST", OneArgument);

// HyperFormula reads a string as if a person had typed it, unless an apostrophe stands before it.
const contents = (rows) =>
  rows.map((row) => row.map((value) => (typeof value === "string" ? `'${value}` : value?.typed ?? value)));

class Desk {
  hello() {
    return HyperFormula.version;
  }

  open({ sheets, names }) {
    const filled = Object.entries(sheets).map(([name, rows]) => [name, contents(rows)]);
    this.book = HyperFormula.buildFromSheets(Object.fromEntries(filled), OPTIONS, names);
    return this.book.getSheetNames();
  }

  // Nothing is worked out until `evaluate`: many changes are then one recalculation.
  set({ area: [name, row, col], values }) {
    if (!this.book.isEvaluationSuspended()) this.book.suspendEvaluation();
    this.book.setCellContents({ sheet: this.book.getSheetId(name), row, col }, contents(values));
    return true;
  }

  evaluate() {
    if (this.book.isEvaluationSuspended()) this.book.resumeEvaluation();
    return true;
  }

  // An error is handed over as such, for a text may look like one.
  read({ area: [name, top, left, bottom, right] }) {
    const sheet = this.book.getSheetId(name);
    const block = { start: { sheet, row: top, col: left }, end: { sheet, row: bottom, col: right } };
    return this.book.getRangeValues(block).map((row) => row.map((value) => (value?.value ? { error: value.value } : value)));
  }
}

function answer(desk, line) {
  try {
    const { do: what, ...details } = JSON.parse(line);
    return { result: desk[what](details) };
  } catch (reason) {
    return { error: String(reason.message ?? reason) }; // whatever it is, the parent must hear of it
  }
}

const desk = new Desk();
for await (const line of createInterface({ input: process.stdin })) {
  process.stdout.write(JSON.stringify(answer(desk, line)) + "\n");
}
