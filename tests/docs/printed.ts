/**
 * Compares a value with its printed form in a docstring or the README. A printed number stands for the half
 * unit of its last digit around it (`7.65` for 7.645 to 7.655), so examples stay readable and still fail when
 * a result moves; `…` stands for what was left out.
 */

type Printed =
  | { readonly kind: "number"; readonly value: number; readonly tolerance: number }
  | { readonly kind: "word"; readonly value: unknown }
  | { readonly kind: "string"; readonly pattern: RegExp; readonly text: string }
  | { readonly kind: "array"; readonly items: readonly Printed[]; readonly open: boolean }
  | { readonly kind: "object"; readonly fields: ReadonlyMap<string, Printed>; readonly open: boolean }
  | { readonly kind: "anything" };

const words: Readonly<Record<string, unknown>> = {
  true: true,
  false: false,
  null: null,
  undefined,
  NaN: Number.NaN,
  Infinity: Number.POSITIVE_INFINITY,
};

class Reader {
  private at = 0;
  constructor(private readonly text: string) {}

  private fail(expected: string): never {
    throw new SyntaxError(
      `cannot read the printed value at "${this.text.slice(this.at, this.at + 30)}": expected ${expected}`,
    );
  }
  private space(): void {
    while (/\s/.test(this.text[this.at] ?? "")) this.at++;
  }
  private take(pattern: RegExp): string | undefined {
    this.space();
    const hit = new RegExp(pattern.source, "y");
    hit.lastIndex = this.at;
    const found = hit.exec(this.text)?.[0];
    if (found !== undefined) this.at += found.length;
    return found;
  }

  whole(): Printed {
    const value = this.value();
    // A remark in brackets may follow: `7.65 (Ω)`.
    this.take(/\(.*\)/);
    this.space();
    if (this.at < this.text.length) this.fail("nothing more");
    return value;
  }

  private value(): Printed {
    const number = this.take(/[-−]?(?:\d[\d_]*\.?\d*|\.\d+)(?:e[-+]?\d+)?(?:…|\.\.\.)?/);
    if (number !== undefined) return readNumber(number);
    const string = this.take(/"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'/);
    if (string !== undefined) return readString(string);
    if (this.take(/\[/) !== undefined) return this.array();
    if (this.take(/\{/) !== undefined) return this.object();
    if (this.take(/…|\.\.\./) !== undefined) return { kind: "anything" };
    const word = this.take(/-?[A-Za-z]+/);
    if (word === "-Infinity") return { kind: "word", value: Number.NEGATIVE_INFINITY };
    if (word !== undefined && word in words) return { kind: "word", value: words[word] };
    return this.fail("a number, string, array, object, true, false, null, undefined");
  }

  private array(): Printed {
    const items: Printed[] = [];
    let open = false;
    while (this.take(/\]/) === undefined) {
      if (this.take(/…|\.\.\./) !== undefined) open = true;
      else items.push(this.value());
      this.take(/,/) ?? (this.take(/(?=\])/) === undefined && this.fail("`,` or `]`"));
    }
    return { kind: "array", items, open };
  }

  private object(): Printed {
    const fields = new Map<string, Printed>();
    let open = false;
    while (this.take(/\}/) === undefined) {
      if (this.take(/…|\.\.\./) !== undefined) open = true;
      else {
        const key = this.take(/"[^"]*"|[\w$]+/) ?? this.fail("a field name");
        if (this.take(/:/) === undefined) this.fail("`:`");
        fields.set(key.replace(/^"|"$/g, ""), this.value());
      }
      this.take(/,/) ?? (this.take(/(?=\})/) === undefined && this.fail("`,` or `}`"));
    }
    return { kind: "object", fields, open };
  }
}

function readNumber(text: string): Printed {
  const cut = /(?:…|\.\.\.)$/.test(text);
  const plain = text
    .replace(/(?:…|\.\.\.)$/, "")
    .replace("−", "-")
    .replaceAll("_", "");
  const [mantissa = "", exponent = "0"] = plain.split("e");
  const unit = 10 ** (Number(exponent) - (mantissa.split(".")[1]?.length ?? 0));
  // A cut number was not rounded: its next digits may add up to one whole unit.
  return { kind: "number", value: Number(plain), tolerance: cut ? unit : unit / 2 };
}

function readString(quoted: string): Printed {
  const text: string = quoted.startsWith("'")
    ? quoted.slice(1, -1).replaceAll("\\'", "'")
    : JSON.parse(quoted);
  const pattern = text.split("…").map((part) => part.replace(/[.*+?^${}()|[\]\\]/g, "\\$&"));
  return { kind: "string", text, pattern: new RegExp(`^${pattern.join("[^]*")}$`) };
}

function show(value: unknown): string {
  return typeof value === "number" ? String(value) : (JSON.stringify(value) ?? String(value));
}

function mismatch(printed: Printed, actual: unknown, path: string): string | undefined {
  const at = path === "" ? "" : `${path}: `;
  switch (printed.kind) {
    case "anything":
      return undefined;
    case "word":
      return Object.is(printed.value, actual)
        ? undefined
        : `${at}expected ${String(printed.value)}, got ${show(actual)}`;
    case "number": {
      const slack = printed.tolerance + 4 * Number.EPSILON * Math.abs(printed.value);
      if (typeof actual === "number" && Math.abs(actual - printed.value) <= slack) return undefined;
      return `${at}expected ${printed.value} ± ${printed.tolerance}, got ${show(actual)}`;
    }
    case "string":
      if (typeof actual === "string" && printed.pattern.test(actual)) return undefined;
      return `${at}expected ${JSON.stringify(printed.text)}, got ${show(actual)}`;
    case "array": {
      if (!Array.isArray(actual)) return `${at}expected an array, got ${show(actual)}`;
      if (!printed.open && actual.length !== printed.items.length) {
        return `${at}expected ${printed.items.length} items, got ${actual.length}: ${show(actual)}`;
      }
      return first(printed.items.entries(), (key, item) => mismatch(item, actual[key], `${path}[${key}]`));
    }
    case "object": {
      if (typeof actual !== "object" || actual === null)
        return `${at}expected an object, got ${show(actual)}`;
      const record = actual as Record<string, unknown>;
      const extra = Object.keys(record).filter((key) => !printed.fields.has(key));
      if (!printed.open && extra.length > 0)
        return `${at}fields not printed: ${extra.join(", ")} in ${show(actual)}`;
      return first(printed.fields.entries(), (key, field) =>
        Object.hasOwn(record, key)
          ? mismatch(field, record[key], `${path}.${key}`)
          : `${at}no field ${key} in ${show(actual)}`,
      );
    }
  }
}

function first<K>(entries: Iterable<[K, Printed]>, check: (key: K, value: Printed) => string | undefined) {
  for (const [key, value] of entries) {
    const problem = check(key, value);
    if (problem !== undefined) return problem;
  }
  return undefined;
}

/** Says what differs between a value and its printed form, or undefined when they agree. */
export function printedMismatch(text: string, actual: unknown): string | undefined {
  return mismatch(new Reader(text).whole(), actual, "");
}
