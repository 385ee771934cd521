using Coilwright.Workshop.Entry;

namespace Coilwright.Papers.Shipping;

/// <summary>What a certificate of test says.</summary>
/// <param name="Subject">Shipment, order or serial that it is of.</param>
/// <param name="Pieces">At least one.</param>
/// <param name="Instruments">Every instrument that a reading names.</param>
public sealed record CertificateContent(string Subject, IReadOnlyList<CertifiedPiece> Pieces, IReadOnlyList<UsedInstrument> Instruments)
{
    /// <summary>Every reason why it cannot be certified; none when it can.</summary>
    public IReadOnlyList<Problem> Check()
    {
        List<Problem> problems = [];
        if (Pieces.Count == 0)
        {
            problems.Add(new Problem("pieces", "a certificate is of something", "none", "one piece or more"));
        }

        problems.AddRange(
            Pieces
                .GroupBy(piece => piece.Serial, StringComparer.OrdinalIgnoreCase)
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("pieces", "this serial stands on it twice", group.Key, "each serial once"))
        );
        for (int at = 0; at < Pieces.Count; at++)
        {
            problems.AddRange(Check(Pieces[at], FormattableString.Invariant($"pieces[{at}]")));
        }

        return problems;
    }

    private IEnumerable<Problem> Check(CertifiedPiece piece, string field)
    {
        foreach (
            (string name, string value) in ((string, string)[])
                [(".serial", piece.Serial), (".verdict", piece.Verdict), (".person", piece.Person)]
        )
        {
            if (string.IsNullOrWhiteSpace(value))
            {
                yield return new Problem(field + name, "is missing", piece.Serial, "at least one letter");
            }
        }

        if (piece.Readings.Count == 0)
        {
            yield return new Problem(field + ".readings", "nothing was read on this piece", piece.Serial, "one reading or more");
        }

        if (piece.Passes && piece.Readings.Any(reading => reading.Inside == false))
        {
            yield return new Problem(
                field + ".verdict",
                "passes with a reading outside its limits",
                piece.Serial,
                "another verdict, or other limits"
            );
        }

        foreach (
            string missing in piece
                .Readings.Select(reading => reading.Reading.Instrument)
                .Where(name => name.Length > 0)
                .Distinct()
                .Except(Instruments.Select(one => one.Name))
        )
        {
            yield return new Problem(
                "instruments",
                "this instrument is named by a reading and is not listed",
                missing,
                "every instrument used"
            );
        }
    }
}
