namespace Coilwright.Workshop.ControlCharts;

/// <summary>What the values are taken to be when capability is told.</summary>
public enum DistributionModel
{
    Normal,

    /// <summary>The logarithms are normal.</summary>
    LogNormal,

    /// <summary>Nothing is assumed: the percentiles of the values themselves.</summary>
    Empirical,
}
