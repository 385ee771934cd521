using System.Globalization;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Parts;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Parts;

/// <summary>The parts list: what so many pieces are made of, with the wire weighed, and room to tick it off the shelf.</summary>
public static class PartsSheet
{
    /// <summary>The sheet.</summary>
    /// <param name="subject">Recipe.</param>
    /// <param name="list">What is in it.</param>
    /// <param name="heading">Shop, revision, day.</param>
    /// <param name="code">What its bar code says.</param>
    /// <param name="lots">Part and lot, for a piece that is made; empty for a list of the recipe.</param>
    public static Sheet Of(
        string subject,
        PartsList list,
        SheetHeading heading,
        string code,
        IReadOnlyList<(string Part, string Lot)>? lots = null
    )
    {
        List<SheetPart> parts =
        [
            new FiguresPart(
                [
                    new KeyFigure("Pieces", Whole(list.Count)),
                    new KeyFigure("Wire in all", Mass(list.Wire.Sum(wire => wire.MassKg) * list.Count), "forecast, without scrap"),
                ],
                2
            ),
            .. list.Options.Count > 0
                ? (SheetPart[])[new TitlePart("Options"), new TextPart(string.Join("; ", list.Options.Select(option => option.Line)) + ".")]
                : [],
            new TitlePart("Parts"),
            new TablePart(
                ["part", "what", "option", "each", "in all", "☐"],
                [
                    .. list.Parts.Select(part =>
                        (string[])
                            [
                                part.Name,
                                part.What,
                                string.Join("; ", part.Options),
                                Whole(part.Each),
                                Whole(part.Each * (long)list.Count),
                                "☐",
                            ]
                    ),
                ],
                [1.5, 3, 1.5, 0.5, 0.7, 0.3]
            ),
            new TitlePart("Wire"),
            new TablePart(
                ["wire", "coils", "each", "in all", "in all", "±"],
                [.. list.Wire.Select(wire => Wire(wire, list.Count))],
                [2.3, 1.2, 1, 1, 1, 0.6]
            ),
            .. list.Notes.Select(note => new TextPart(note)),
        ];
        if (lots is { Count: > 0 })
        {
            parts.Add(new TitlePart("What went in"));
            parts.Add(new TablePart(["part", "lot or tag"], [.. lots.Select(lot => (string[])[lot.Part, lot.Lot])], [1, 2]));
        }

        return new Sheet("Parts list", subject, heading, parts, Sheet.CodeOf(code));
    }

    private static string[] Wire(WireLine wire, int count) =>
        [
            wire.Name,
            string.Join(", ", wire.Coils),
            Length(wire.LengthM),
            Length(wire.LengthM * count),
            Mass(wire.MassKg * count),
            (100 * wire.Part).ToString("0.#", CultureInfo.InvariantCulture) + " %",
        ];

    private static string Length(double metres) =>
        metres >= 10_000 ? QuantityParser.FormatIn(metres, QuantityKind.Length, "km") : FigureFormatter.Value(metres, "m");

    private static string Mass(double kilograms) => FigureFormatter.Value(kilograms, "kg");

    private static string Whole(long count) => count.ToString("#,##0", CultureInfo.InvariantCulture);
}
