import { type Html, html } from './html.ts'
import { REPORT_STYLE } from './reportStyle.ts'

/** Nothing runs in a report, and nothing is fetched: its pictures are in it. */
const POLICY = "default-src 'none'; img-src data:; style-src 'unsafe-inline'"

/** One page of HTML with its style inside, to be read on screen and printed on A4. */
export const reportPage = (
  title: string,
  header: Html,
  main: readonly (Html | undefined)[],
): string =>
  html`<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="Reelwright">
<title>${title}</title>
<style>${{ html: REPORT_STYLE }}</style>
</head>
<body>
<header>
${header}</header>
<main>
${main}</main>
</body>
</html>
`.html
