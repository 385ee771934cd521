using Coilwright.Analysis.Quantities;
using Coilwright.Papers.Sheets;
using Coilwright.Papers.Spec;
using Coilwright.Workshop.Steps;

namespace Coilwright.Papers.Shipping;

/// <summary>Readings of a certificate as tables: one row a piece where all pieces were asked the same, else one row a reading.</summary>
internal static class CertificateTables
{
    private const int MostColumns = 4;

    public static IEnumerable<SheetPart> Of(CertificateContent content, TimeZoneInfo zone) =>
        content.Pieces.Count > 1 && AskedAlike(content.Pieces) ? OneRowAPiece(content.Pieces, zone) : OneRowAReading(content.Pieces, zone);

    private static bool AskedAlike(IReadOnlyList<CertifiedPiece> pieces)
    {
        var first = Asked(pieces[0]);
        return first.Length <= MostColumns
            && pieces.All(piece =>
                piece.Recipe == pieces[0].Recipe && piece.Revision == pieces[0].Revision && Asked(piece).SequenceEqual(first)
            );
    }

    /// <summary>Everything about the readings of a piece but their values and temperatures.</summary>
    private static (string, double?, double?, double?, string, double?)[] Asked(CertifiedPiece piece) =>
        [
            .. piece.Readings.Select(line =>
                (line.Reading.Quantity, line.Reading.AtHz, line.Low, line.High, line.Reading.Instrument, line.Reading.HalfPart)
            ),
        ];

    private static IEnumerable<SheetPart> OneRowAPiece(IReadOnlyList<CertifiedPiece> pieces, TimeZoneInfo zone)
    {
        IReadOnlyList<CertifiedReading> asked = pieces[0].Readings;
        yield return new TitlePart("What was read");
        yield return new TextPart(Made(pieces[0]));
        yield return new TablePart(
            ["quantity", "95 % interval", "limits", "instrument"],
            [
                .. asked.Select(line =>
                    (string[])
                        [ReadingFormatter.Name(line.Reading), ReadingFormatter.Interval(line.Reading), line.Limits, line.Reading.Instrument]
                ),
            ],
            [1.6, 1.4, 1.6, 1.4]
        );
        yield return new TitlePart("Pieces");
        yield return new TablePart(
            ["serial", .. asked.Select(line => ReadingFormatter.Name(line.Reading)), "verdict", "tested"],
            [
                .. pieces.Select(piece =>
                    (string[])
                        [
                            piece.Serial,
                            .. piece.Readings.Select(Cell),
                            piece.Verdict,
                            $"{piece.Person}, {ShopTime.Words(piece.TestedUtc, zone)}",
                        ]
                ),
            ],
            [1, .. asked.Select(_ => 1.1), 1.1, 1.5]
        );
    }

    private static string Cell(CertifiedReading line)
    {
        string warm = line.Reading is { Quantity: QuantityKey.DcResistance, TemperatureC: { } celsius }
            ? FormattableString.Invariant($", read at {celsius:0.#} °C")
            : "";
        return ReadingFormatter.Value(line.Reading) + warm + (line.Words is "inside" or "no limit" ? "" : ": " + line.Words);
    }

    private static IEnumerable<SheetPart> OneRowAReading(IReadOnlyList<CertifiedPiece> pieces, TimeZoneInfo zone)
    {
        yield return new TitlePart("Readings");
        yield return new TablePart(
            ["serial", "quantity", "value", "95 % interval", "limits", "so it is"],
            [.. pieces.SelectMany(Readings)],
            [1, 2.2, 0.9, 1, 1.9, 1.1]
        );
        yield return new TitlePart("Pieces");
        yield return new TablePart(
            ["serial", "recipe", "verdict", "tested by", "at"],
            [
                .. pieces.Select(piece =>
                    (string[])[piece.Serial, Made(piece), piece.Verdict, piece.Person, ShopTime.Words(piece.TestedUtc, zone)]
                ),
            ],
            [1.2, 1.7, 2, 1.1, 1.5]
        );
    }

    private static IEnumerable<IReadOnlyList<string>> Readings(CertifiedPiece piece) =>
        piece.Readings.Select(line =>
            (string[])
                [
                    piece.Serial,
                    ReadingFormatter.Name(line.Reading)
                        + (ReadingFormatter.Conditions(line.Reading) is { Length: > 0 } words ? $" ({words})" : ""),
                    ReadingFormatter.Value(line.Reading),
                    ReadingFormatter.Interval(line.Reading),
                    line.Limits,
                    line.Words,
                ]
        );

    private static string Made(CertifiedPiece piece) => piece.Recipe + (piece.Revision.Length > 0 ? ", revision " + piece.Revision : "");
}
