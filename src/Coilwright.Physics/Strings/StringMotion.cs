namespace Coilwright.Physics.Strings;

/// <summary>
/// What follows from a string's motion over a pickup: overtones of the bent linkage, and the pitch that the magnets' pull takes away. SI
/// units.
/// </summary>
public static class StringMotion
{
    /// <summary>Heights at which the linkage is asked: the overtone m is exact but for those beyond 2·6 − m.</summary>
    private const int Nodes = 6;

    /// <summary>
    /// Voltage of the 2nd, 3rd and 4th harmonic over that of the fundamental, for a string that swings as a pure sine towards the pickup
    /// and away.
    /// </summary>
    /// <remarks>Λ(z + A·cos θ) = Σ c_m·cos mθ by its Chebyshev nodes; the voltage of the m-th goes as m·c_m.</remarks>
    /// <param name="linkageAt">Linkage when the string is displaced upward by so many metres, Wb.</param>
    /// <param name="amplitudeM">Amplitude A over the pickup, m, 0.1 µm…20 mm; the string must stay above the poles.</param>
    /// <returns>Three ratios, of the 2nd, 3rd and 4th harmonic; zeros when the fundamental is zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The amplitude lies outside its range.</exception>
    public static double[] Harmonics(Func<double, double> linkageAt, double amplitudeM)
    {
        ArgumentNullException.ThrowIfNull(linkageAt);
        Require.InRange(amplitudeM, 1e-7, 0.02);
        double[] term = new double[5];
        for (int k = 0; k < Nodes; k++)
        {
            double angle = Math.PI * (k + 0.5) / Nodes,
                linkage = linkageAt(amplitudeM * Math.Cos(angle));
            for (int m = 1; m < term.Length; m++)
            {
                term[m] += linkage * Math.Cos(m * angle);
            }
        }

        return Math.Abs(term[1]) > 0 ? [.. Enumerable.Range(2, 3).Select(m => m * Math.Abs(term[m] / term[1]))] : [0, 0, 0];
    }

    /// <summary>
    /// Change of the fundamental's pitch by the magnets, as a part of it (negative: flat), for motion towards the pickup.
    /// </summary>
    /// <remarks>
    /// The pull grows as the string comes nearer, a spring that pushes: Δf/f = −k·L·sin²(πp/L)/(π²·T), [Rayleigh]'s first order in the
    /// spring over the string's own stiffness.
    /// </remarks>
    /// <param name="pullGradientNPerM">Growth k of the pull with nearness, N/m.</param>
    /// <param name="tensionN">Tension T of the string, N, 0.001…10,000.</param>
    /// <param name="scaleLengthM">Sounding length L, m, 0.05…2.</param>
    /// <param name="fromBridgeM">Place p of the pickup from the bridge, m, 0…L.</param>
    /// <exception cref="ArgumentOutOfRangeException">A number lies outside its range.</exception>
    public static double PitchShift(double pullGradientNPerM, double tensionN, double scaleLengthM, double fromBridgeM)
    {
        double sine = Math.Sin(Math.PI * Require.InRange(fromBridgeM, 0, scaleLengthM) / Require.InRange(scaleLengthM, 0.05, 2));
        return -pullGradientNPerM * scaleLengthM * sine * sine / (Math.PI * Math.PI * Require.InRange(tensionN, 1e-3, 1e4));
    }

    /// <summary>Mass of a metre of string, kg: steel core, and a wrap of round wire that fills π/4 of its ring.</summary>
    /// <param name="model">The string.</param>
    /// <remarks>7,850 kg/m³ for steel; 8,300 for the wrap, between steel and nickel: from memory.</remarks>
    public static double MassKgPerM(StringModel model)
    {
        ArgumentNullException.ThrowIfNull(model);
        double core = Math.PI / 4 * model.CoreDiameterM * model.CoreDiameterM,
            all = Math.PI / 4 * model.OuterDiameterM * model.OuterDiameterM;
        return 7850 * core + 8300 * Math.PI / 4 * Math.Max(0, all - core);
    }

    /// <summary>Tension that tunes a string, N: µ·(2·L·f)².</summary>
    /// <param name="model">The string, which gives its mass per length µ.</param>
    /// <param name="scaleLengthM">Sounding length L, m.</param>
    /// <param name="frequencyHz">Fundamental f of the open string, Hz.</param>
    public static double TensionN(StringModel model, double scaleLengthM, double frequencyHz) =>
        MassKgPerM(model) * Math.Pow(2 * scaleLengthM * frequencyHz, 2);
}
