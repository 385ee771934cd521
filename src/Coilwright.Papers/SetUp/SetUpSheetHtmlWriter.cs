using System.Globalization;
using System.Text;
using Coilwright.Papers.Figures;
using Coilwright.Papers.Formatting;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.SetUp;
using static Coilwright.Papers.Markup;

namespace Coilwright.Papers.SetUp;

/// <summary>The set-up sheet: one printed page for each coil, read from a metre away at the winder.</summary>
public static class SetUpSheetHtmlWriter
{
    /// <summary>A whole document that prints on A4 or Letter, one page a coil. Needs nothing from outside.</summary>
    /// <param name="setUp">What it says.</param>
    /// <param name="ways">Addresses and names of pages to go on to, shown above the sheet and not printed; null for none.</param>
    public static string Render(WindingSetUp setUp, IReadOnlyList<(string Address, string Name)>? ways = null)
    {
        StringBuilder html = new();
        html.Append(
            "<!doctype html><html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\">"
        );
        string name = setUp.Batch is { } batch ? $"batch {batch.Name}, {setUp.RecipeName}" : setUp.RecipeName;
        html.Append($"<title>Set-up: {E(name)}</title><style>{SetUpSheetStyle.Css}</style></head><body>");
        WriteWays(html, ways ?? []);
        html.Append("<main>");
        html.Append(Pages(setUp));
        return html.Append("</main></body></html>").ToString();
    }

    /// <summary>The sheets alone, for a page that brings its own head and <see cref="SetUpSheetStyle.Css"/>.</summary>
    public static string Pages(WindingSetUp setUp)
    {
        StringBuilder html = new();
        for (int index = 0; index < setUp.Coils.Count; index++)
        {
            WritePage(html, setUp, setUp.Coils[index], index + 1);
        }

        return html.ToString();
    }

    private static void WriteWays(StringBuilder html, IReadOnlyList<(string Address, string Name)> ways)
    {
        if (ways.Count > 0)
        {
            html.Append("<nav class=\"ways\" aria-label=\"To the pages\">");
            html.Append(string.Concat(ways.Select(way => $"<a href=\"{E(way.Address)}\">{E(way.Name)}</a>")));
            html.Append("</nav>");
        }
    }

    private static void WritePage(StringBuilder html, WindingSetUp setUp, CoilSetUp coil, int page)
    {
        html.Append($"<article class=\"sheet\" aria-label=\"Set-up of coil {E(coil.Name)}\">");
        WriteHeading(html, setUp, coil, page);
        WriteLargest(html, setUp, coil);
        if (setUp.Phase is { IsRed: true } phase)
        {
            html.Append(
                $"<p class=\"caution\"><strong>Stop:</strong> {E(phase.Warnings[0].Message)} ({E(phase.Warnings[0].Understood ?? "")}).</p>"
            );
        }

        html.Append("<ol class=\"steps\">");
        WriteMount(html, coil);
        WriteThread(html, setUp, coil);
        WriteMachine(html, setUp, coil);
        WriteWind(html, coil);
        WriteCheck(html, setUp, coil);
        html.Append("</ol>");
        WriteBreak(html, coil);
        html.Append(
            $"<footer><div><p class=\"closing\">{E(Cautions.ClosingLine)}</p><p>{E(Where(setUp))}, page {page} of "
                + $"{setUp.Coils.Count}</p></div>{BarCode.Svg(Code(setUp, coil))}</footer></article>"
        );
    }

    private static void WriteHeading(StringBuilder html, WindingSetUp setUp, CoilSetUp coil, int page)
    {
        SheetHeading heading = setUp.Heading;
        html.Append($"<header><div><h1>{E(setUp.RecipeName)}</h1><p class=\"coil\">Coil <strong>{E(coil.Name)}</strong></p></div><dl>");
        if (setUp.Batch is { } batch)
        {
            Term(html, "Batch", batch.Name);
            Term(html, "Coils", batch.CoilsWords);
        }

        Term(html, "Revision", heading.Revision.Length > 0 ? heading.Revision : "not released");
        Term(html, "Shop", heading.Shop.Length > 0 ? heading.Shop : "–");
        Term(html, "Date", heading.Date is { } date ? date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) : "–");
        Term(html, "Page", string.Create(CultureInfo.InvariantCulture, $"{page} of {setUp.Coils.Count}"));
        html.Append("</dl></header>");
    }

    private static void WriteLargest(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        ExpectedResistance room = coil.AtRoom;
        string limits = room is { LowOhm: { } low, HighOhm: { } high }
            ? $"passes from {Ohm(low)} to {Ohm(high)}"
            : $"no limit in the recipe; 95 % of coils expected from {Ohm(room.Expected.Low)} to {Ohm(room.Expected.High)}";
        if (setUp.IsForNoWinder)
        {
            html.Append($"<p class=\"no-winder\"><strong>Note</strong> {E(WindingSetUp.ForNoWinderWords)}</p>");
        }

        string measured = setUp.Batch is { } batch ? Measured(batch) : "";
        html.Append("<section class=\"largest\"><div>");
        WriteStop(html, setUp, coil);
        html.Append("</div>");
        html.Append(
            $"<div><h2>Meter at {E(QuantityParser.Format(room.TemperatureC, QuantityKind.Temperature))}</h2><p "
                + $"class=\"meter\">{E(Ohm(room.Expected.Value))}</p><p>{E(limits + measured)}</p></div></section>"
        );
    }

    private static void WriteStop(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        if (setUp.HasCounter)
        {
            string doubt = coil.OnMachine is { StopDoubtTurns: > 0 } on
                ? string.Create(CultureInfo.InvariantCulture, $", ± {on.StopDoubtTurns:0.#} turns")
                : "";
            html.Append(
                $"<h2>{(setUp.IsForNoWinder ? "Real turns" : "Counter stop")}</h2><p "
                    + $"class=\"stop\">{Count(coil.CounterStop(setUp.CounterCorrection))}</p>"
            );
            string correction =
                $"for {Count(coil.Turns)} real turns, correction × "
                + $"{setUp.CounterCorrection.ToString("0.000", CultureInfo.InvariantCulture)} {setUp.CorrectionBasis}{doubt}";
            html.Append($"<p>{E(setUp.IsForNoWinder ? "no counter's correction is in it" : correction)}</p>");
        }
        else if (coil.OnMachine?.Timed is { } timed)
        {
            html.Append(CultureInfo.InvariantCulture, $"<h2>Stop after</h2><p class=\"stop\">{timed.Seconds:0} s</p>");
            html.Append(
                CultureInfo.InvariantCulture,
                $"<p>for {coil.Turns:#,##0} turns; by the clock {timed.Turns.Low:#,##0} to {timed.Turns.High:#,##0}, "
                    + $"{E(Ohm(timed.DcResistanceAt20C.Low))} – {E(Ohm(timed.DcResistanceAt20C.High))} at 20 "
                    + $"°C{(timed.SpreadStated ? "" : " (spread assumed: measure yours)")}</p>"
            );
        }
        else
        {
            html.Append("<h2>Stop after</h2><p class=\"stop\">–</p><p>no counter, and neither recipe nor machine states a speed</p>");
        }
    }

    private static void WriteMount(StringBuilder html, CoilSetUp coil)
    {
        html.Append("<li><h2>Mount the bobbin</h2><dl>");
        Term(html, "Wire runs", coil.DirectionWords);
        Term(html, "Spindle", coil.SpindleWords);
        Term(html, "Start", coil.StartSide);
        html.Append("</dl>");
        Caution(html, string.Join(' ', Cautions.For(Job.RunningWinder)));
        html.Append("</li>");
    }

    private static void WriteThread(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        html.Append("<li><h2>Thread the wire</h2><dl>");
        Term(html, "Wire", coil.Wire);
        if (setUp.Batch is { } batch)
        {
            Term(html, "Spool", batch.SpoolWords);
        }

        Term(html, "Bare / overall", $"{Mm(coil.BareDiameterM.Value)} / {Mm(coil.OverallDiameterM.Value)}");
        Term(html, "A coil takes", $"{FigureFormatter.WithInterval(coil.WireLength)}, {FigureFormatter.WithInterval(coil.WireMass)}");
        TensionAdvice tension = coil.Tension;
        Term(
            html,
            "Tension",
            (tension.OwnN is { } own ? $"yours {Gf(own)}, {tension.Words}; band " : $"{tension.Words}; band ")
                + $"{Gf(tension.LowN)} – {Gf(tension.HighN)}, never above {Gf(tension.MaximumN)} ({TensionAdvice.Source})"
        );
        html.Append("</dl>");
        Caution(html, Cautions.FineWire);
        html.Append("</li>");
    }

    private static void WriteMachine(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        html.Append("<li><h2>Set the machine</h2><dl class=\"pairs\">");
        if (setUp.Machine.Length > 0)
        {
            Term(html, "Machine", setUp.Machine);
        }

        Term(html, coil.OnMachine is null ? "Pitch" : "Recipe's pitch", Mm(coil.PitchM) + (coil.PitchStated ? "" : ", from the lay"));
        if (coil.OnMachine is { } on)
        {
            Term(html, "Set pitch", Mm(on.Pitch.PitchM));
            Term(html, "Turns per layer", on.TurnsPerLayer.ToString("0.#", CultureInfo.InvariantCulture));
            Term(html, "Layers", on.Layers.ToString("0.#", CultureInfo.InvariantCulture));
            html.Append("</dl><dl>");
            Term(html, "How", on.Pitch.How);
            foreach (string note in ((string[])[on.Pitch.Note, on.SpeedWords, on.BrakeWords]).Where(note => note.Length > 0))
            {
                Term(html, "Note", note);
            }
        }
        else
        {
            Term(html, "Turns per layer", FigureFormatter.Value(coil.TurnsPerLayer));
            Term(html, "Layers", FigureFormatter.Value(coil.Layers));
        }

        html.Append("</dl></li>");
    }

    private static string Measured(BatchHeading batch) =>
        (batch.RoomKnown ? "; the room as entered" : "; no room temperature is in force")
        + (batch.SpoolWire.Length > 0 ? $", wire of spool {batch.Spool}" : "");

    private static void WriteWind(StringBuilder html, CoilSetUp coil)
    {
        html.Append("<li><h2>Wind</h2><dl class=\"pairs\">");
        double? speedRpm = coil.OnMachine is { } on ? on.SpeedRpm : coil.SpeedRpm;
        string together = coil.OnMachine is { Spindles: > 1 and var count } ? $" for {count} coils" : "";
        Term(html, "Speed", speedRpm is { } speed ? Count(speed) + " rpm" : "not stated in the recipe");
        Term(
            html,
            "Time",
            coil.RunTimeS is { } seconds ? string.Create(CultureInfo.InvariantCulture, $"{seconds / 60:0.0} min{together}") : "–"
        );
        Term(html, "Build", FigureFormatter.WithInterval(coil.Fill.Build));
        Term(html, "Fill", coil.Fill.Fill is { } fill ? FigureFormatter.WithInterval(fill) : "–");
        html.Append("</dl><dl>");
        Term(html, "Room", coil.Fill.Words);
        html.Append("</dl></li>");
    }

    private static void WriteCheck(StringBuilder html, WindingSetUp setUp, CoilSetUp coil)
    {
        ExpectedResistance cold = coil.At20C;
        string limits = cold is { LowOhm: { } low, HighOhm: { } high } ? $", {Ohm(low)} – {Ohm(high)} passes" : "";
        html.Append("<li><h2>Bare the ends, cool, measure</h2><dl>");
        Term(html, "At 20 °C", Ohm(cold.Expected.Value) + limits);
        Term(
            html,
            "First piece",
            $"{FigureFormatter.WithInterval(coil.Inductance)} at 1 kHz, build "
                + $"{FigureFormatter.WithInterval(coil.Fill.Build)}; then release the series"
        );
        Term(html, "Write down", "ohms and the coil's temperature; 10 °C is 4 %");
        if (setUp.Phase?.Coils.FirstOrDefault(one => one.Name == coil.Name) is { FirstSwing: not 0 } signs)
        {
            Term(html, "Iron to a pole", $"first swing {signs.FirstSwingWords} (finish hot)");
        }

        html.Append("</dl>");
        Caution(html, string.Join(' ', Cautions.For(Job.ReadingCoil)));
        html.Append("</li>");
    }

    private static void WriteBreak(StringBuilder html, CoilSetUp coil)
    {
        double at = Math.Round(coil.Turns * 0.75 / 100) * 100;
        html.Append(
            $"<section class=\"break\"><p><strong>If the wire breaks</strong>: stop, write down the counter, choose. At "
                + $"{Count(at)}, for example:</p><ul>"
        );
        foreach (string choice in BreakAdvice.Choices(coil, at))
        {
            html.Append($"<li>{E(choice)}</li>");
        }

        html.Append("</ul></section>");
    }

    /// <summary>What the code says: the batch, which it opens; else recipe, revision and coil, shortened to what can be printed.</summary>
    private static string Code(WindingSetUp setUp, CoilSetUp coil) =>
        setUp.Batch?.Name
        ?? string.Join('/', new[] { setUp.RecipeName, setUp.Heading.Revision, coil.Name }.Where(part => part.Length > 0))
            .ToUpperInvariant();

    private static string Where(WindingSetUp setUp) =>
        (setUp.Batch is { } batch ? $"Batch {batch.Name}, " : "")
        + setUp.RecipeName
        + (setUp.Heading.Revision.Length > 0 ? ", revision " + setUp.Heading.Revision : "")
        + (setUp.Heading.Shop.Length > 0 ? ", " + setUp.Heading.Shop : "");

    private static void Term(StringBuilder html, string term, string meaning) =>
        html.Append($"<div><dt>{E(term)}</dt><dd>{E(meaning)}</dd></div>");

    private static void Caution(StringBuilder html, string text) =>
        html.Append($"<p class=\"caution\" role=\"note\"><strong>Caution</strong> {E(text)}</p>");

    private static string Ohm(double ohm) => QuantityParser.Format(ohm, QuantityKind.Resistance);

    private static string Mm(double lengthM) => QuantityParser.FormatIn(lengthM, QuantityKind.Length, "mm");

    private static string Gf(double forceN) => QuantityParser.FormatIn(forceN, QuantityKind.Force, "gf");

    private static string Count(double count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}
