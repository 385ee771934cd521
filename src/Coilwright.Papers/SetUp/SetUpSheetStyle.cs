namespace Coilwright.Papers.SetUp;

/// <summary>How the set-up sheet looks: ink on paper, copper rules that stay visible in black and white.</summary>
public static class SetUpSheetStyle
{
    public const string Css = """
        @page { size: auto; margin: 7mm 12mm; }
        :root { --ink: #1b1916; --paper: #fffdf8; --copper: #9a4a17; }
        html { background: var(--paper); color: var(--ink); }
        body { margin: 0; font: 15px/1.3 system-ui, "DejaVu Sans", sans-serif; font-variant-numeric: tabular-nums; }
        .sheet { box-sizing: border-box; max-width: 186mm; margin: 0 auto; padding: 0; break-after: page; }
        .sheet:last-child { break-after: auto; }
        @media screen { .sheet { padding: 6mm 3mm; } }
        .sheet h1 { font-size: 28px; line-height: 1.1; margin: 0; }
        .sheet h2 { font-size: 16px; margin: 0 0 2px; }
        .sheet p, .sheet ul { margin: 0; }
        .sheet header {
            display: flex; justify-content: space-between; gap: 8mm; border-bottom: 3px solid var(--copper);
            padding-bottom: 2mm;
        }
        .sheet header .coil { font-size: 20px; }
        .sheet header dl { display: grid; grid-template-columns: auto auto; gap: 0 8mm; margin: 0; font-size: 14px; }
        .sheet dl { margin: 0; }
        .sheet dl > div { display: flex; gap: 3mm; }
        .sheet dt { flex: none; min-width: 27mm; }
        .sheet header dt { min-width: 17mm; }
        .steps dl.pairs { display: grid; grid-template-columns: 1fr 1fr; column-gap: 6mm; }
        .sheet dd { margin: 0; font-weight: 600; }
        .largest { display: grid; grid-template-columns: 1fr 1fr; gap: 8mm; padding: 2mm 0; border-bottom: 1px solid var(--ink); }
        .largest .stop { font-size: 72px; line-height: 1; font-weight: 700; letter-spacing: -1px; }
        .largest .meter { font-size: 56px; line-height: 1.25; font-weight: 700; }
        .steps { list-style: none; counter-reset: step; margin: 0; padding: 0; }
        .steps > li {
            counter-increment: step; position: relative; display: grid; grid-template-columns: 31mm 1fr;
            align-items: start; padding: 1mm 0 1mm 9mm; border-bottom: 1px solid var(--ink);
            break-inside: avoid;
        }
        .steps > li::before {
            content: counter(step); position: absolute; left: 0; top: 1mm; font-size: 28px; line-height: 1;
            font-weight: 700; color: var(--copper);
        }
        .steps > li > h2 { grid-row: span 3; margin: 0; }
        .steps > li > :not(h2) { grid-column: 2; }
        .caution {
            border: 2px solid var(--ink); border-left-width: 10px; padding: 1mm 2.5mm;
            margin-top: 1mm !important; font-size: 12px; break-inside: avoid;
        }
        .no-winder { border: 2px dashed var(--ink); padding: 1mm 2.5mm; margin-top: 1mm !important; }
        .ways { display: flex; flex-wrap: wrap; gap: 4px 20px; max-width: 186mm; margin: 0 auto; padding: 3mm 3mm 0; }
        .ways a { color: var(--copper); padding: 10px 0; min-height: 24px; }
        @media print { .ways { display: none; } }
        .caution strong { text-transform: uppercase; letter-spacing: 0.06em; margin-right: 1mm; }
        .break { padding: 1mm 0; }
        .break ul { padding-left: 5mm; }
        .sheet footer {
            display: flex; justify-content: space-between; align-items: center; gap: 6mm;
            border-top: 3px solid var(--copper); padding-top: 1.5mm; font-size: 14px;
        }
        .sheet .barcode { height: 9mm; flex: none; background: #fff; }
        @media screen and (max-width: 560px) {
          .sheet { padding: 4mm; overflow-wrap: anywhere; }
          .sheet header, .largest, .steps dl.pairs, .sheet header dl { display: block; }
          .steps > li { grid-template-columns: minmax(0, 1fr); }
          .steps > li > :not(h2) { grid-column: 1; }
          .largest .stop, .largest .meter { font-size: 44px; }
          .sheet footer { flex-wrap: wrap; }
        }
        @media print {
          html { background: #fff; }
          body { font-size: 13px; line-height: 1.22; }
          .sheet h1 { font-size: 24px; }
          .sheet h2 { font-size: 14px; }
          .sheet header .coil { font-size: 17px; }
          .sheet header dl, .sheet footer { font-size: 12.5px; }
          .largest { padding: 1mm 0; }
          .largest .meter { font-size: 48px; }
          .steps > li { padding-top: 0.6mm; padding-bottom: 0.6mm; }
          .caution { font-size: 12px; padding: 0.6mm 2.5mm; }
        }
        .closing { font-weight: 600; }
        """;
}
