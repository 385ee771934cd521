namespace Coilwright.Papers.Figures;

/// <summary>One recipe of a trade-off.</summary>
/// <param name="First">Its quantity along the page, SI or dB.</param>
/// <param name="Second">Its quantity up the page.</param>
/// <param name="Words">What it is.</param>
public sealed record TradeOffDot(double First, double Second, string Words)
{
    /// <summary>Where the dot leads; empty for nowhere.</summary>
    public string Link { get; init; } = "";

    /// <summary>What following it does.</summary>
    public string LinkWords { get; init; } = "";

    /// <summary>Number of a dot that is pinned; empty for the others.</summary>
    public string Mark { get; init; } = "";
}
