/** The pocket sheet's style: paper, ink in the dark, and night-red; every target at least 44 px. Its hash stands in `csp.ts`. */

export const POCKET_STYLE = `
:root{--paper:#fbfaf7;--ink:#16181c;--line:#6b6f76;color-scheme:light}
@media(prefers-color-scheme:dark){:root{--paper:#14171c;--ink:#eceae4;--line:#8b9099;color-scheme:dark}}
:root.red{--paper:#000;--ink:#f00000;--line:#be0000;color-scheme:dark}
:root:has(#night-red:checked){--paper:#000;--ink:#f00000;--line:#be0000;color-scheme:dark}
*{box-sizing:border-box}
html{background:var(--paper);color:var(--ink);-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:12px 14px 60px;max-width:44rem;font:17px/1.4 system-ui,sans-serif;font-variant-numeric:tabular-nums;overflow-wrap:break-word}
h1{font-size:1.5rem;margin:.3em 0}
h2{font-size:1.3rem;margin:2em 0 .4em;border-top:3px solid var(--ink);padding-top:.4em}
h3{font-size:1.1rem;margin:1.4em 0 .3em}
h4{font-size:1rem;margin:1.2em 0 .2em}
p{margin:.4em 0}
small{font-size:.85em}
a{color:inherit;display:inline-flex;align-items:center;min-height:44px;min-width:44px}
nav{display:flex;flex-wrap:wrap;gap:0 1.1em}
ul,ol{margin:0;padding:0;list-style:none}
.steps li{border-bottom:1px solid var(--line)}
.steps label,.theme{display:flex;gap:12px;align-items:flex-start;min-height:44px;padding:9px 0;cursor:pointer}
.theme{align-items:center}
.what{flex:1}
.what small{display:block}
.steps time{font-weight:700;white-space:nowrap}
.caution{border-left:4px solid var(--ink);padding-left:8px}
.steps li.skipped .what{text-decoration:line-through}
input[type=checkbox]{appearance:none;-webkit-appearance:none;flex:none;width:26px;height:26px;margin:0;border:2px solid var(--ink);border-radius:3px;background:var(--paper);color:var(--ink);display:grid;place-items:center}
input[type=checkbox]:checked::after{content:"";width:8px;height:14px;margin-top:-4px;border:solid var(--ink);border-width:0 3px 3px 0;transform:rotate(45deg)}
:focus-visible{outline:3px solid var(--ink);outline-offset:2px}
table{border-collapse:collapse;width:100%}
th,td{text-align:left;vertical-align:top;padding:6px 8px 6px 0;border-bottom:1px solid var(--line)}
th{font-weight:400;font-size:.85em}
td.strong{font-weight:700}
.right{text-align:right}
.wide{overflow-x:auto}
::placeholder{color:var(--line);opacity:1}
.figures{display:grid;grid-template-columns:repeat(auto-fill,minmax(8.5rem,1fr));gap:8px;margin:.6em 0}
.figures div{border:1px solid var(--line);padding:8px}
.figures b{display:block;font-size:1.5rem;line-height:1.15}
.notice{border:2px solid var(--ink);padding:8px;margin:.5em 0}
.notice b{text-transform:uppercase;font-size:.8em;letter-spacing:.05em;margin-right:.6em}
.where li{border-bottom:1px solid var(--line);padding:7px 0;font-size:.95em}
.moves li{border-bottom:1px solid var(--line);padding:8px 0 8px 2.2em;position:relative}
.moves li>b:first-child{position:absolute;left:0}
svg{display:block;width:100%;height:auto;font-family:system-ui,sans-serif;margin:.4em 0}
fieldset{border:1px solid var(--line);margin:.8em 0;padding:6px 12px 12px}
.fields{display:grid;grid-template-columns:repeat(auto-fill,minmax(9rem,1fr));gap:10px}
.fields label{display:block;font-size:.85em}
.fields input,textarea,button{font:inherit;width:100%;min-height:44px;padding:8px;border:1px solid var(--line);border-radius:3px;background:var(--paper);color:var(--ink)}
textarea{min-height:7em;font-family:ui-monospace,monospace;font-size:14px}
button{width:auto;padding:8px 16px;margin:8px 8px 8px 0;border:2px solid var(--ink);font-weight:700}
.only-script{display:none}
.script .only-script{display:block}
@media print{body{max-width:none}nav,.theme,.only-script{display:none!important}}
`
