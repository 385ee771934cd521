using System.Globalization;
using Coilwright.Papers.Formatting;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Shipping;

/// <summary>What is in the boxes, with the question that magnets in the air ask.</summary>
public static class PackingList
{
    /// <summary>The sheet.</summary>
    /// <param name="content">What it says.</param>
    /// <param name="heading">Shop and day.</param>
    /// <exception cref="ArgumentException">The content has problems: <see cref="PackingContent.Check"/> tells them all.</exception>
    public static Sheet Of(PackingContent content, SheetHeading heading)
    {
        if (content.Check() is { Count: > 0 } problems)
        {
            throw new ArgumentException(
                string.Join("; ", problems.Select(problem => $"{problem.Field}: {problem.Message}")),
                nameof(content)
            );
        }

        bool boxes = content.Pieces.Any(piece => piece.Box.Length > 0);
        string mass = content.MassKg is { } kilograms ? FigureFormatter.Value(kilograms, "kg") : "not weighed";
        List<SheetPart> parts =
        [
            new FiguresPart(
                [
                    new KeyFigure("Pieces", content.Pieces.Count.ToString("#,##0", CultureInfo.InvariantCulture)),
                    new KeyFigure("Mass, packed", mass),
                ],
                2
            ),
            .. content.To.Count > 0 ? (SheetPart[])[new TitlePart("To"), .. content.To.Select(line => new TextPart(line))] : [],
            new TitlePart("Pieces"),
            new TablePart(
                [.. Cells("no.", "serial", "recipe", "box", boxes), "☐ in"],
                [
                    .. content.Pieces.Select(
                        (piece, at) =>
                            (string[])
                                [
                                    .. Cells(
                                        (at + 1).ToString(CultureInfo.InvariantCulture),
                                        piece.Serial,
                                        piece.Recipe
                                            + (piece.Revision.Length > 0 ? ", revision " + piece.Revision : "")
                                            + (piece.Set.Length > 0 ? "; set " + piece.Set : ""),
                                        piece.Box,
                                        boxes
                                    ),
                                    "☐",
                                ]
                    ),
                ],
                boxes ? [0.5, 1.6, 2.4, 0.8, 0.5] : [0.5, 1.6, 3.2, 0.5]
            ),
            new TextPart("Packed by: ______________________     Day: ______________"),
            .. Magnets(content.MagnetMomentAm2),
            new CautionPart(string.Join(' ', Cautions.For(Job.Handling))),
        ];
        return new Sheet("Packing list", content.Reference, heading, parts, Sheet.CodeOf(content.Reference))
        {
            OfRevision = false,
            OwnFacts = [("Reference", content.Reference)],
        };
    }

    private static IEnumerable<string> Cells(string number, string serial, string recipe, string box, bool boxes) =>
        boxes ? [number, serial, recipe, box] : [number, serial, recipe];

    private static IEnumerable<SheetPart> Magnets(double? momentAm2)
    {
        string sum = momentAm2 is { } moment ? FigureFormatter.Value(moment, "1") + " A·m² at most" : "not known";
        yield return new TitlePart("Magnets, if it goes by air");
        yield return new TextPart($"Sum of the magnets' dipole moments: {sum}. The bound takes them all to point one way.");
        yield return new TablePart(
            ["question", "by the bound", "measured on the packed box"],
            [
                [
                    "Is the field at 4.5 m (15 ft) from any surface of the box above 0.00525 G? Then it may not fly "
                        + "under the law named below.",
                    AirFreight.Bound(momentAm2, AirFreight.ForbiddenDistanceM),
                    "______________ G",
                ],
                [
                    "Must it be declared as magnetised material? The limit and the distance are the carrier's: ask for "
                        + "them. Here the bound at 2 m.",
                    AirFreight.Bound(momentAm2, AirFreight.NearDistanceM),
                    "________ G at ________ m",
                ],
            ],
            [2.4, 1.1, 1.5]
        );
        yield return new TextPart($"Answer: {AirFreight.Answer(momentAm2)}. Law: {AirFreight.Law}.");
        yield return new TextPart("The carrier and the rules in force on the day decide; ask them before the box is closed.");
    }
}
