/**
 * The documentation site: API by room, guides beside it. Everything is in the pages themselves: formulas become
 * MathML, so that nothing is fetched while reading.
 */
import { katex } from "@mdit/plugin-katex";
import { rooms } from "./scripts/rooms.mjs";
import { documents, siteParts } from "./scripts/siteParts.mjs";

/** @type {Partial<import("typedoc").TypeDocOptions>} */
export default {
  name: "electroheat",
  entryPoints: rooms("src").map((room) => `src/${room}/index.ts`),
  tsconfig: "tsconfig.json",
  out: "site",
  customCss: "docs/site.css",
  readme: "README.md",
  plugin: [siteParts],
  projectDocuments: [...documents()],
  disableGit: true,
  sourceLinkTemplate: "",
  disableSources: true,
  hideGenerator: true,
  excludeInternal: true,
  // A room's page is read for what can be called; types are looked up from there.
  groupOrder: ["Documents", "Functions", "Classes", "*"],
  useFirstParagraphOfCommentAsSummary: true,
  blockTags: [
    "@example",
    "@param",
    "@returns",
    "@throws",
    "@source",
    "@checkedAgainst",
    "@since",
    "@remarks",
    "@see",
    "@typeParam",
    "@defaultValue",
  ],
  validation: {
    notExported: true,
    invalidLink: true,
    invalidPath: true,
    rewrittenLink: true,
    notDocumented: true,
  },
  treatWarningsAsErrors: true,
  markdownItLoader(md) {
    md.use(katex, { output: "mathml" });
  },
};
