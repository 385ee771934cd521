namespace Coilwright.Physics.Circuit.Networks;

/// <summary>Noise that heat makes in every resistance: density √(4kT·Re Z) at the output [Nyquist].</summary>
internal static class ThermalNoise
{
    /// <summary>Boltzmann constant, J/K, exact since 2019 [SI].</summary>
    private const double Boltzmann = 1.380649e-23;

    /// <summary>Intervals of Simpson's rule on a logarithmic axis; a resonance of Q 50 is then sampled 20 times across its width.</summary>
    private const int Intervals = 8192;

    public static double Volt(TwoStages stages, double fromHz, double toHz, double temperatureC)
    {
        Require.InRange(fromHz, 1e-3, 1e9);
        Require.InRange(toHz, Math.BitIncrement(fromHz), 1e9);
        double kelvin = Require.InRange(temperatureC, -40, 155) + 273.15;
        if (stages.IsSilent)
        {
            return 0;
        }

        double[] hz = PickupResponse.LogFrequencies(fromHz, toHz, Intervals + 1),
            ohm = new double[hz.Length];
        stages.NoiseOhm(hz, ohm);
        double sum = 0;
        for (int i = 0; i <= Intervals; i++)
        {
            sum += hz[i] * ohm[i] * SimpsonRule.WeightAt(i, Intervals);
        }

        double integral = sum * Math.Log(toHz / fromHz) / (3 * Intervals);
        return Math.Sqrt(4 * Boltzmann * kelvin * Math.Max(integral, 0));
    }
}
