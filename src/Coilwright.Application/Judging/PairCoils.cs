using Coilwright.Analysis.Pairing;
using Coilwright.Formats.Tables;
using Coilwright.Workshop.Entry;

namespace Coilwright.Application.Judging;

/// <summary>A person asks which of the coils at hand go together.</summary>
public sealed class PairCoils
{
    /// <summary>The families of a table, in the order they come; more than two cannot be paired.</summary>
    public ReadOutcome<IReadOnlyList<string>> Families(IReadOnlyList<CoilRow> rows)
    {
        string[] families = [.. rows.Select(row => row.Family).Distinct(StringComparer.Ordinal)];
        return families.Length <= 2
            ? new ReadOutcome<IReadOnlyList<string>>(families, [])
            : new ReadOutcome<IReadOnlyList<string>>(
                null,
                [
                    new Problem(
                        "family",
                        "coils of more than two families cannot be paired in one table",
                        string.Join(", ", families),
                        "one family, paired freely, or two, one of each"
                    ),
                ]
            );
    }

    /// <summary>The best pairing; a table that is too long for the search is refused.</summary>
    /// <param name="rows">The coils.</param>
    /// <param name="quantities">By what they are paired.</param>
    /// <param name="families">Their families.</param>
    /// <param name="wishes">One for each quantity.</param>
    public ReadOutcome<PairingAnswer> Pair(
        IReadOnlyList<CoilRow> rows,
        IReadOnlyList<string> quantities,
        IReadOnlyList<string> families,
        IReadOnlyList<PairingPreference> wishes
    )
    {
        int most = families.Count == 2 ? CoilPairing.MostInTwoFamilies : CoilPairing.MostSearchedFreely;
        bool searched = families.Count == 2 || wishes.Count > 1 || wishes[0].HasOffset;
        return searched && rows.Count > most
            ? new ReadOutcome<PairingAnswer>(
                null,
                [new Problem("COILS", $"{rows.Count} coils are too many for one search", Allowed: $"up to {most}")]
            )
            : new ReadOutcome<PairingAnswer>(
                CoilPairing.Best([.. rows.Select(row => new PairingCoil(row.Tag, row.Family, [.. quantities.Select(row.Value)]))], wishes),
                []
            );
    }
}
