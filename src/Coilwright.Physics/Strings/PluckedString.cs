namespace Coilwright.Physics.Strings;

/// <summary>A string lifted at one place and let go: its partials, and the voltage they induce. SI units.</summary>
/// <remarks>
/// An ideal string lifted by h at the share p of its length is a triangle, whose Fourier series is
/// aₙ = 2h·sin(nπp)/(n²π²·p(1 − p)) [StringSeries]; a plectrum of width w rounds the corner and multiplies it by sin(x)/x, x = nπw/(2L).
/// Stiffness stretches the frequencies: fₙ = n·f₀·√(1 + B·n²), B = π³·E·d⁴/(64·T·L²) [StiffString].
/// </remarks>
public sealed record PluckedString
{
    /// <summary>Young's modulus of steel wire, Pa; from memory, ±5 %.</summary>
    private const double YoungPa = 200e9;

    /// <summary>f₀, what the string would sound without stiffness, Hz, 10…5000.</summary>
    public required double FundamentalHz { get; init; }

    /// <summary>Sounding length L, m, 0.05…2.</summary>
    public required double LengthM { get; init; }

    /// <summary>Place of the pluck from the bridge, m, inside the sounding length.</summary>
    public required double PluckM { get; init; }

    /// <summary>How far the string is lifted there, m.</summary>
    public double LiftM { get; init; } = 1e-3;

    /// <summary>Width over which the pluck rounds the corner, m; zero for a sharp one.</summary>
    public double WidthM { get; init; }

    /// <summary>B; zero for a string that bends without effort.</summary>
    public double Inharmonicity { get; init; }

    /// <summary>How its partials die away.</summary>
    public StringDecay Decay { get; init; } = StringDecay.Usual;

    /// <summary>Inharmonicity B of a string by the stiffness of its core.</summary>
    /// <param name="coreDiameterM">d, m.</param>
    /// <param name="tensionN">T, N, above zero.</param>
    /// <param name="lengthM">Sounding length L, m, above zero.</param>
    public static double InharmonicityOf(double coreDiameterM, double tensionN, double lengthM) =>
        Math.Pow(Math.PI, 3) * YoungPa * Math.Pow(coreDiameterM, 4) / (64 * tensionN * lengthM * lengthM);

    /// <summary>Frequency of partial n, Hz; n need not be whole.</summary>
    public double FrequencyHz(double n) => n * FundamentalHz * Math.Sqrt(1 + Inharmonicity * n * n);

    /// <summary>Wave number of partial n, rad/m.</summary>
    public double RadPerM(double n) => n * Math.PI / LengthM;

    /// <summary>Amplitude of partial n, m, signed.</summary>
    public double DisplacementM(int n)
    {
        double p = PluckM / LengthM,
            rounded = n * Math.PI * WidthM / (2 * LengthM),
            share = rounded > 0 ? Math.Sin(rounded) / rounded : 1;
        return 2 * LiftM * Math.Sin(n * Math.PI * p) / (n * n * Math.PI * Math.PI * p * (1 - p)) * share;
    }

    /// <summary>All partials up to a frequency.</summary>
    /// <param name="highestHz">Highest frequency, Hz.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number of the string lies outside its range.</exception>
    public IReadOnlyList<StringPartial> Partials(double highestHz)
    {
        Require.InRange(FundamentalHz, 10, 5000);
        Require.InRange(LengthM, 0.05, 2);
        Require.InRange(PluckM, 1e-6, LengthM - 1e-6);
        return
        [
            .. Enumerable
                .Range(1, (int)(highestHz / FundamentalHz) + 1)
                .TakeWhile(n => FrequencyHz(n) <= highestHz)
                .Select(n => new StringPartial(n, FrequencyHz(n), Decay.PerS(FrequencyHz(n)), DisplacementM(n))),
        ];
    }
}
