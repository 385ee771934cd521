using Coilwright.Workshop.Entry;

namespace Coilwright.Papers.Shipping;

/// <summary>What a packing list says.</summary>
/// <param name="Reference">The customer's reference.</param>
/// <param name="Pieces">What is in the boxes.</param>
public sealed record PackingContent(string Reference, IReadOnlyList<PackedPiece> Pieces)
{
    /// <summary>Where it goes, one line each; may be empty.</summary>
    public IReadOnlyList<string> To { get; init; } = [];

    /// <summary>Mass of the packed goods, kg; null when nobody weighed them.</summary>
    public double? MassKg { get; init; }

    /// <summary>Sum of the sizes of all magnets' dipole moments, A·m²; null when nobody gave it.</summary>
    public double? MagnetMomentAm2 { get; init; }

    /// <summary>Every problem; none when a list can be made of it.</summary>
    public IReadOnlyList<Problem> Check()
    {
        List<Problem> problems = [];
        if (string.IsNullOrWhiteSpace(Reference))
        {
            problems.Add(new Problem("reference", "the customer's reference is missing", Allowed: "at least one letter or digit"));
        }

        if (Pieces.Count == 0)
        {
            problems.Add(new Problem("pieces", "the boxes are empty", "none", "one piece or more"));
        }

        problems.AddRange(
            Pieces
                .GroupBy(piece => piece.Serial, StringComparer.OrdinalIgnoreCase)
                .Where(group => group.Count() > 1)
                .Select(group => new Problem("pieces", "this piece is packed twice", group.Key, "each serial once"))
        );
        if (MassKg is { } mass && !(mass is > 0 and <= 1000))
        {
            problems.Add(
                new Problem("mass", "outside what a box can weigh", FormattableString.Invariant($"{mass} kg"), "above 0 to 1,000 kg")
            );
        }

        if (MagnetMomentAm2 is { } moment && !(moment is >= 0 and <= 1e6))
        {
            problems.Add(
                new Problem(
                    "magnets",
                    "outside what magnets can have",
                    FormattableString.Invariant($"{moment} A·m²"),
                    "0 to 1,000,000 A·m²"
                )
            );
        }

        return problems;
    }
}
