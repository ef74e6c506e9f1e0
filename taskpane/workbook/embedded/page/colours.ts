/** The grid in the page's colours: its accent, its dark, and the states with the same look in both. */
import { ThemeService } from "@univerjs/core";
import { ICanvasColorService } from "@univerjs/preset-sheets-core";
import { states } from "../../../styles/states";
import type { Engine } from "../engine";

/** The page's accent (styles/look.css) at 600, lighter and darker round it. */
const ACCENT = {
  50: "#EEF6F8",
  100: "#E0EFF2",
  200: "#C4DFE5",
  300: "#9AC7D1",
  400: "#4F98A8",
  500: "#23798B",
  600: "#0C5A6B",
  700: "#084452",
  800: "#073945",
  900: "#052B34",
};

const OWN: ReadonlySet<string> = new Set(
  Object.values(states).flatMap(({ ink, ground }) => [`#${ink.toLowerCase()}`, `#${ground.toLowerCase()}`]),
);

export function colour({ injector }: Engine): void {
  const theme = injector.get(ThemeService);
  theme.setTheme({ ...theme.getCurrentTheme(), primary: ACCENT });
  const colours = injector.get(ICanvasColorService);
  const turned = colours.getRenderColor.bind(colours);
  // in the dark it turns every colour; a word of a state keeps the look by which people know it
  colours.getRenderColor = (color) => (OWN.has(color.toLowerCase()) ? color : turned(color));
  const dark = matchMedia("(prefers-color-scheme: dark)");
  theme.setDarkMode(dark.matches);
  dark.addEventListener("change", ({ matches }) => theme.setDarkMode(matches));
}
