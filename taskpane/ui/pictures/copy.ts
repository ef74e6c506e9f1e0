/** A picture to take away: as a file of lines, or as a PNG for a report. Nothing is sent anywhere. */
import { download } from "../parts/download";
import { WIDTH } from "./Chart";

/** Dots for each unit of the drawing: enough for print at half a page's width. */
const SHARP = 4;
const SVG = "image/svg+xml";

const linesOf = (svg: SVGSVGElement): string => {
  const copy = svg.cloneNode(true) as SVGSVGElement;
  const { width, height } = svg.viewBox.baseVal;
  copy.setAttribute("width", String(width));
  copy.setAttribute("height", String(height));
  copy.removeAttribute("class");
  return new XMLSerializer().serializeToString(copy);
};

export const svgFile = (svg: SVGSVGElement, title: string): void =>
  download(new TextEncoder().encode(linesOf(svg)), `${title.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.svg`, SVG);

export async function pngOf(svg: SVGSVGElement): Promise<Blob> {
  const { height } = svg.viewBox.baseVal;
  const image = new Image();
  image.src = `data:${SVG};charset=utf-8,${encodeURIComponent(linesOf(svg))}`;
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = WIDTH * SHARP;
  canvas.height = height * SHARP;
  canvas.getContext("2d")!.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((done, fail) =>
    canvas.toBlob((blob) => (blob ? done(blob) : fail(new Error("no picture came of it"))), "image/png"),
  );
}
