using System.Globalization;
using Coilwright.Papers.Sheets;
using Coilwright.Workshop.SetUp;

namespace Coilwright.Papers.Shipping;

/// <summary>Certificate of test of one piece or of a shipment: readings, limits, verdict, who, when, and with what.</summary>
public static class CertificateOfTest
{
    /// <summary>The sheet.</summary>
    /// <param name="content">What it says.</param>
    /// <param name="heading">Shop and day; a revision stands at each piece.</param>
    /// <param name="zone">The shop's time zone.</param>
    /// <exception cref="ArgumentException">The content has problems: <see cref="CertificateContent.Check()"/> tells them all.</exception>
    public static Sheet Of(CertificateContent content, SheetHeading heading, TimeZoneInfo zone)
    {
        if (content.Check() is { Count: > 0 } problems)
        {
            throw new ArgumentException(
                string.Join("; ", problems.Select(problem => $"{problem.Field}: {problem.Message}")),
                nameof(content)
            );
        }

        int passed = content.Pieces.Count(piece => piece.Passes);
        string verdict =
            content.Pieces.Count == 1
                ? content.Pieces[0].Verdict
                : string.Create(CultureInfo.InvariantCulture, $"{passed} of {content.Pieces.Count} pass");
        List<SheetPart> parts =
        [
            new FiguresPart([new KeyFigure("Verdict", verdict)], 1),
            .. CertificateTables.Of(content, zone),
            new TextPart("Resistances at 20 °C where the temperature was written down; inductance, Q and AC resistance as series values."),
            .. Magnets(content.Pieces),
            new TitlePart("Instruments"),
            content.Instruments.Count > 0
                ? new TablePart(["instrument", "uncertainty", "last checked"], [.. content.Instruments.Select(Instrument)], [2, 3, 1.2])
                : new TextPart("No instrument was written down."),
            new TextPart(
                "These are readings of this shop with the instruments named. It is no calibration certificate, and says "
                    + "nothing of what was not read."
            ),
            new TextPart("Signed: ______________________     Day: ______________"),
            new CautionPart(string.Join(' ', Cautions.For(Job.Owning))),
        ];
        return new Sheet("Certificate of test", content.Subject, heading, parts, Sheet.CodeOf(content.Subject)) { OfRevision = false };
    }

    /// <summary>The charge of the magnets, once for all pieces charged alike.</summary>
    private static IEnumerable<SheetPart> Magnets(IReadOnlyList<CertifiedPiece> pieces)
    {
        IGrouping<string, CertifiedPiece>[] alike =
        [
            .. pieces.Where(piece => piece.Charge.Length > 0).GroupBy(piece => piece.Charge, StringComparer.Ordinal),
        ];
        return alike.Length == 0
            ? []
            :
            [
                new TitlePart("Magnets"),
                .. alike.Select(same => new TextPart($"{string.Join(", ", same.Select(piece => piece.Serial))}: {same.Key}.")),
            ];
    }

    private static IReadOnlyList<string> Instrument(UsedInstrument instrument) =>
        [
            instrument.Name,
            instrument.Uncertainty.Length > 0 ? instrument.Uncertainty : "not stated",
            instrument.LastChecked?.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture) ?? "not known",
        ];
}
