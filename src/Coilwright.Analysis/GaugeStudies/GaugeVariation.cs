namespace Coilwright.Analysis.GaugeStudies;

/// <summary>What a gauge study finds, standard deviations in the unit of the readings.</summary>
/// <param name="Repeatability">One person, one part, again and again.</param>
/// <param name="Reproducibility">From person to person.</param>
/// <param name="PartToPart">From part to part.</param>
public sealed record GaugeVariation(double Repeatability, double Reproducibility, double PartToPart)
{
    /// <summary>The measuring altogether.</summary>
    public double Gauge => Math.Sqrt(Repeatability * Repeatability + Reproducibility * Reproducibility);

    /// <summary>All that the study saw: gauge and parts.</summary>
    public double Total => Math.Sqrt(Gauge * Gauge + PartToPart * PartToPart);

    /// <summary>Share of the gauge in the spread of the study, 0…1.</summary>
    public double GaugeShare => Total > 0 ? Gauge / Total : 0;

    /// <summary>1.41·part-to-part/gauge, not yet cut to a whole number; null when the gauge shows no variation.</summary>
    public double? Categories => Gauge > 0 ? 1.41 * PartToPart / Gauge : null;

    /// <summary>Distinct categories that the gauge can tell apart, at least 1; null when the gauge shows no variation.</summary>
    public int? DistinctCategories => Categories is { } raw ? (int)Math.Max(1, Math.Min(1e6, Math.Floor(raw))) : null;
}
