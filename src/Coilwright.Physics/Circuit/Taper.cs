namespace Coilwright.Physics.Circuit;

/// <summary>How a control's track runs: the share of its resistance below the wiper at each setting from 0 to 1.</summary>
public sealed class Taper
{
    /// <summary>
    /// Share at half way of a logarithmic track unless said: 10 %. Common practice, no source [Taper]; tracks from 5 % to 20 % are sold.
    /// </summary>
    public const double UsualMiddle = 0.1;

    private readonly double[] settings;
    private readonly double[] shares;
    private readonly double exponentBase;

    private Taper(double[] settings, double[] shares, double exponentBase) =>
        (this.settings, this.shares, this.exponentBase) = (settings, shares, exponentBase);

    /// <summary>Share and setting are the same.</summary>
    public static Taper Linear { get; } = new([], [], 1);

    /// <summary>Rising exponentially from 0 to 1: share = (bˢ − 1)/(b − 1) with b = (1/m − 1)², so that half way gives m.</summary>
    /// <param name="middle">Share at half way, 0.01…0.49.</param>
    /// <exception cref="ArgumentOutOfRangeException">The share lies outside its range.</exception>
    public static Taper Logarithmic(double middle = UsualMiddle)
    {
        double root = 1 / Require.InRange(middle, 0.01, 0.49) - 1;
        return new Taper([], [], root * root);
    }

    /// <summary>Through measured pairs, straight between them.</summary>
    /// <param name="pairs">Two or more of setting and share: settings strictly rising from 0 to 1, shares never falling, 0…1.</param>
    /// <exception cref="ArgumentOutOfRangeException">A setting or share lies outside its range or out of order.</exception>
    /// <exception cref="ArgumentException">An end is missing.</exception>
    public static Taper Measured(IReadOnlyList<(double Setting, double Share)> pairs)
    {
        double[] at = [.. pairs.Select(pair => pair.Setting)],
            share = [.. pairs.Select(pair => pair.Share)];
        for (int i = 0; i < at.Length; i++)
        {
            Require.InRange(at[i], i == 0 ? 0 : Math.BitIncrement(at[i - 1]), i == 0 ? 0 : 1, nameof(pairs));
            Require.InRange(share[i], i == 0 ? 0 : share[i - 1], 1, nameof(pairs));
        }

        return at.Length >= 2 && at[^1] >= 1
            ? new Taper(at, share, 1)
            : throw new ArgumentException("A measured taper needs its two ends, 0 and 1.", nameof(pairs));
    }

    /// <summary>Share of the track below the wiper.</summary>
    /// <param name="setting">0…1, 1 = full.</param>
    /// <exception cref="ArgumentOutOfRangeException">The setting lies outside its range.</exception>
    public double Share(double setting)
    {
        Require.InRange(setting, 0, 1);
        if (settings.Length == 0)
        {
            return exponentBase > 1 ? (Math.Pow(exponentBase, setting) - 1) / (exponentBase - 1) : setting;
        }

        int next = Math.Max(1, Array.FindIndex(settings, at => at >= setting));
        double part = (setting - settings[next - 1]) / (settings[next] - settings[next - 1]);
        return shares[next - 1] + part * (shares[next] - shares[next - 1]);
    }
}
