/**
 * Sentences written for people are read, not computed: their words are not changed. A text without a space is a name, a code, a unit or a
 * separator, and is.
 */
import { PluginKind } from "@stryker-mutator/api/plugin";

/** @param {any} path @returns {string | undefined} why it is left alone */
function shouldIgnore(path) {
  return path.isStringLiteral() && /\S\s+\S/.test(path.node.value) ? "a sentence for people" : undefined;
}

export const strykerPlugins = [{ kind: PluginKind.Ignore, name: "prose", value: { shouldIgnore } }];
