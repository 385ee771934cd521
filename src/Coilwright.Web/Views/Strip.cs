using Coilwright.Physics;
using Coilwright.Workshop;
using Coilwright.Workshop.Readings;

namespace Coilwright.Web.Views;

/// <summary>One coil on the strip.</summary>
public sealed record StripPoint(string Tag, Estimate Value, VerdictKind Kind);

/// <summary>A run of coils as a strip: DC resistance at 20 °C in order of entry, with the limits of the recipe's target.</summary>
/// <param name="Points">Coils with a usable resistance.</param>
/// <param name="LowOhm">Lower limit, Ω, or null without a target.</param>
/// <param name="HighOhm">Upper limit, Ω, or null without a target.</param>
public sealed record Strip(IReadOnlyList<StripPoint> Points, double? LowOhm, double? HighOhm)
{
    public static Strip Of(BatchStanding standing, (double LowOhm, double HighOhm)? limits) => new(
        [.. standing.Coils.Where(coil => coil.Verdict.DcResistanceAt20C is not null)
            .Select(coil => new StripPoint(coil.Tag, coil.Verdict.DcResistanceAt20C!.Value, coil.Verdict.Kind))],
        limits?.LowOhm, limits?.HighOhm)
    {
        Run = BatchChart.Of(standing.Coils.Select(coil => (coil.Tag, coil.Verdict))),
    };

    /// <summary>The run as a chart with its own limits and signals; null for fewer than two coils.</summary>
    public RunChart? Run { get; init; }
}
