/** Colours of the two themes. Every picture paints its own background, so it is safe on any page and in print. */
import { checkOneOf } from "../quantity/index.ts";

/**
 * Light or dark. Each brings its own background: what a picture lies on, or the reader's system setting, changes nothing.
 * @since 0.1.0
 */
export type Theme = "light" | "dark";

/** Colours by role. Text roles reach 4.5:1 on background and panel, lines 3:1 (WCAG 2.2, 1.4.3 and 1.4.11): tested. */
export interface Palette {
  readonly background: string;
  readonly panel: string;
  readonly edge: string;
  readonly ink: string;
  readonly soft: string;
  readonly grid: string;
  readonly good: string;
  readonly bad: string;
  readonly doubt: string;
  readonly series: readonly string[];
}

/** The palettes; the series colours are an addition to dash, marker and label, never the only difference. */
const PALETTES: Readonly<Record<Theme, Palette>> = {
  light: {
    background: "#ffffff",
    panel: "#f3f5f8",
    edge: "#c9d0d8",
    ink: "#1a1e24",
    soft: "#4b5460",
    grid: "#e3e7ec",
    good: "#17633a",
    bad: "#b01e14",
    doubt: "#7a4a00",
    series: ["#1d5a9e", "#a3410f", "#1b6a41", "#6a3d9c", "#0a6670", "#8a1c55"],
  },
  dark: {
    background: "#14181d",
    panel: "#1d232a",
    edge: "#3b4550",
    ink: "#eaeef2",
    soft: "#b0bac5",
    grid: "#2a323b",
    good: "#7fd4a3",
    bad: "#ff9c8f",
    doubt: "#f2c266",
    series: ["#86b9f2", "#f2a679", "#84d3a4", "#c6a8ee", "#6fd0da", "#f09cc4"],
  },
};

/** Palette of a theme by name. */
export function paletteOf(theme: Theme | undefined): Palette {
  return PALETTES[checkOneOf("theme", theme ?? "light", ["light", "dark"])];
}
