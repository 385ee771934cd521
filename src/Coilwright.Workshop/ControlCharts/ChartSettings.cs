using Coilwright.Analysis.Charts;
using Coilwright.Analysis.Quantities;

namespace Coilwright.Workshop.ControlCharts;

/// <summary>How a run of coils is charted.</summary>
public sealed record ChartSettings
{
    public const int MostCoils = 100_000;

    /// <summary>Quantities that have a chart, by key; the first is drawn unless another is asked for.</summary>
    public static IReadOnlyList<string> Quantities { get; } = [QuantityKey.DcResistance, QuantityKey.Inductance, QuantityKey.Q];

    /// <summary>Quantity, by key.</summary>
    public string Quantity { get; init; } = Quantities[0];

    /// <summary>
    /// True: limits stay as they were taken from the first coils. False: they are taken from all that is drawn and move with each coil.
    /// </summary>
    public bool Frozen { get; init; } = true;

    /// <summary>From how many coils frozen limits are taken, 2 or more.</summary>
    public int LimitsFrom { get; init; } = IndividualsChart.UsualBase;

    /// <summary>Coils in a subgroup, 2…50; 1 charts single coils.</summary>
    public int Subgroup { get; init; } = 1;
    public SubgroupSpread Spread { get; init; } = SubgroupSpread.Range;
    public RuleSet Rules { get; init; } = RuleSet.WesternElectric;

    /// <summary>Weight of the newest value in the moving average, above 0, to 1.</summary>
    public double Lambda { get; init; } = 0.2;

    /// <summary>Allowance and decision line of the cumulative sums, in sigma.</summary>
    public double Allowance { get; init; } = 0.5;
    public double Decision { get; init; } = 5;
    public SpecificationSides Sides { get; init; } = SpecificationSides.Both;
    public DistributionModel Shape { get; init; } = DistributionModel.Normal;
}
