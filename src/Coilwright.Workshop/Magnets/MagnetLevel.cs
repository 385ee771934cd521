using System.Globalization;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Magnets;

/// <summary>How strongly magnets are charged: a share of full, or the field read over the poles. Exactly one of the two is known.</summary>
/// <param name="Share">Share of the full charge, 0.01 to 1; 1 is full. Null for a level told as a field.</param>
/// <param name="FieldT">Field over the poles, T, above 0 whichever pole is up; null for a level told as a share.</param>
/// <param name="JigM">Distance of the probe from the poles, m; null for a share.</param>
public sealed record MagnetLevel(double? Share, double? FieldT = null, double? JigM = null)
{
    /// <summary>Distance of the probe where nobody says another, m; as at the final test.</summary>
    public const double UsualJigM = 1e-3;

    /// <summary>Distances that far apart, a part of one, count as one jig; our assumption.</summary>
    private const double SameJigPart = 0.02;

    /// <summary>Charged in full.</summary>
    public static MagnetLevel Full { get; } = new(1.0);

    /// <summary>True for a full charge.</summary>
    public bool IsFull => Share is >= 1;

    /// <summary>The level as a thing: "80 % of full", "900 G at 1 mm".</summary>
    public string Words =>
        (Share, FieldT) switch
        {
            (>= 1, _) => "full",
            ({ } share, _) => string.Create(CultureInfo.InvariantCulture, $"{100 * share:0.##} % of full"),
            (_, { } tesla) => $"{QuantityParser.FormatIn(tesla, QuantityKind.FluxDensity, "G")} at "
                + $"{QuantityParser.FormatIn(JigM ?? UsualJigM, QuantityKind.Length, "mm")}",
            _ => "not known",
        };

    /// <summary>The level as something done to magnets: "charged full", "knocked down to 80 % of full".</summary>
    public string Done => IsFull ? "charged full" : "knocked down to " + Words;

    /// <summary>True when the two are told the same way, so that they can be held against each other.</summary>
    public bool IsLike(MagnetLevel other) => Share is null == other.Share is null && (FieldT is null || IsSameJig(other.JigM ?? UsualJigM));

    /// <summary>True when a probe at this distance reads the same field as this level's.</summary>
    public bool IsSameJig(double metres) => Math.Abs(metres - (JigM ?? UsualJigM)) <= SameJigPart * (JigM ?? UsualJigM);

    /// <summary>How far this level lies above another of its kind, a part of the other.</summary>
    /// <exception cref="ArgumentException">The two are told in different ways.</exception>
    public double Above(MagnetLevel other) =>
        IsLike(other)
            ? (Share ?? FieldT!.Value) / (other.Share ?? other.FieldT!.Value) - 1
            : throw new ArgumentException(
                "A share of full and a field, or fields at two distances, cannot be held against each other.",
                nameof(other)
            );
}
