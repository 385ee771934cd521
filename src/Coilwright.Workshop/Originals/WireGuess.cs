using Coilwright.Analysis.Originals;
using Coilwright.Physics.Wire;

namespace Coilwright.Workshop.Originals;

/// <summary>Wires that an original may be wound from, and how common each is in pickups: our assumption, no source.</summary>
internal static class WireGuess
{
    public static IReadOnlyList<WireHypothesis> For(WireModel described, string gauge, string build, bool gaugeKnown, bool metric) =>
        [.. WireCatalogue.Standard.Sizes
            .Where(size => gaugeKnown ? size.Gauge == gauge : size.IsMetric == metric && size.Bare.NominalM is > 0.03e-3 and < 0.13e-3)
            .SelectMany(size => size.Builds.Keys.Select(name => new WireHypothesis(
                size.Gauge, name, WithMeasured(WireCatalogue.Standard.ModelFor(size.Gauge, name, described.Insulation), described), OfSize(size) * OfBuild(name))))
            .Where(wire => wire.Prior > 0)];

    /// <summary>What was measured on the wire itself holds whatever its size is called.</summary>
    private static WireModel WithMeasured(WireModel table, WireModel described) => table with { MeasuredOhmPerM = described.MeasuredOhmPerM };

    private static double OfSize(WireSize size) => size.IsMetric ? 0.05 : size.Number switch
    {
        42 => 0.40,
        43 => 0.18,
        44 => 0.10,
        41 => 0.07,
        40 => 0.04,
        45 => 0.04,
        46 => 0.02,
        42.5 => 0.03,
        _ when Math.Abs(size.Number - Math.Round(size.Number)) > 0.1 => 0.01,
        _ => 0.02,
    };

    private static double OfBuild(string build) => build switch
    {
        "single" or "grade-1" => 0.7,
        "heavy" or "grade-2" => 0.25,
        "triple" or "grade-3" => 0.05,
        _ => 0,
    };
}
