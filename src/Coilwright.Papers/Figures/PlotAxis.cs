namespace Coilwright.Papers.Figures;

/// <summary>One axis of a plot: its ends, what is written beside it, and where its ticks stand.</summary>
/// <param name="Low">Value at its beginning.</param>
/// <param name="High">Value at its end.</param>
/// <param name="Label">Quantity and unit.</param>
/// <param name="Ticks">Values with a rule and a number.</param>
/// <param name="Logarithmic">True for a logarithmic axis.</param>
public sealed record PlotAxis(double Low, double High, string Label, IReadOnlyList<double> Ticks, bool Logarithmic = false)
{
    private static readonly double[] s_round = [1, 2, 5, 10];

    /// <summary>
    /// A linear axis that holds all values, with four to eight round ticks; <paramref name="withZero"/> makes it reach zero.
    /// </summary>
    public static PlotAxis Round(IEnumerable<double> values, string label, bool withZero = true)
    {
        double[] all = [.. values.Where(double.IsFinite), .. withZero ? [0.0] : Array.Empty<double>()];
        double low = all.DefaultIfEmpty(0).Min(),
            high = all.DefaultIfEmpty(1).Max();
        high = high > low ? high : low + Math.Max(1, Math.Abs(low));
        double raw = (high - low) / 5,
            power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        double step = s_round.First(digit => digit * power >= raw * 0.999) * power;
        double first = Math.Floor(low / step + 1e-9),
            last = Math.Ceiling(high / step - 1e-9);
        return new PlotAxis(
            first * step,
            last * step,
            label,
            [.. Enumerable.Range(0, (int)(last - first) + 1).Select(i => (first + i) * step)]
        );
    }

    /// <summary>Audio frequency, 20 Hz to 20 kHz.</summary>
    public static PlotAxis Audio { get; } =
        new(20, 20_000, "Frequency, Hz", [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000], true);

    /// <summary>0 at the beginning, 1 at the end.</summary>
    public double Part(double value) => Logarithmic ? Math.Log(value / Low) / Math.Log(High / Low) : (value - Low) / (High - Low);

    /// <summary>The number written at a tick.</summary>
    public string Number(double tick)
    {
        if (Logarithmic && tick >= 1000)
        {
            return FormattableString.Invariant($"{tick / 1000:0.##} k");
        }

        double clean = Math.Abs(tick) < 1e-12 ? 0 : tick;
        return FormattableString.Invariant($"{clean:0.####}").Replace('-', '−');
    }
}
