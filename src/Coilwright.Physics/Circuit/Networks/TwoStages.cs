namespace Coilwright.Physics.Circuit.Networks;

/// <summary>A circuit's network, and behind a buffer, if there is one, the network of cable and input.</summary>
internal sealed class TwoStages : IGainCurve
{
    private readonly NetworkCurve first;
    private readonly NetworkCurve? second;
    private readonly double bufferGain = 1;

    public TwoStages(GuitarCircuit circuit)
    {
        CircuitSketch sketch = CircuitSketch.Of(circuit);
        first = new NetworkCurve(sketch.Sketch, sketch.Output);
        if (circuit.Load.Buffer is { } buffer)
        {
            NetworkSketch behind = new();
            int output = behind.Node("out");
            behind.Branch("buffer", NetworkSketch.Ground, output, new LumpedPickup(Require.InRange(buffer.OutputOhm, 1e-3, 1e9), 0, 0), 1, 1);
            CircuitSketch.CableAndInput(behind, output, circuit.Load);
            second = new NetworkCurve(behind, output);
            bufferGain = Require.InRange(buffer.Gain, 1e-3, 1e3);
        }
    }

    public bool IsSilent => first.IsSilent;

    /// <summary>Gain, and the impedance seen at the output.</summary>
    public void Solve(ReadOnlySpan<double> frequenciesHz, Span<double> re, Span<double> im, Span<double> ohmRe, Span<double> ohmIm)
    {
        first.Solve(frequenciesHz, re, im, ohmRe, ohmIm);
        if (second is null)
        {
            return;
        }

        double[] r = new double[re.Length], i = new double[re.Length];
        second.Solve(frequenciesHz, r, i, ohmRe, ohmIm);
        for (int k = 0; k < r.Length; k++)
        {
            (re[k], im[k]) = (bufferGain * (re[k] * r[k] - im[k] * i[k]), bufferGain * (re[k] * i[k] + im[k] * r[k]));
        }
    }

    /// <summary>Squared noise density at the output over 4kT, Ω: what stands at the first output comes through the buffer.</summary>
    public void NoiseOhm(ReadOnlySpan<double> frequenciesHz, Span<double> ohm)
    {
        double[] a = new double[ohm.Length], b = new double[ohm.Length], c = new double[ohm.Length];
        first.Solve(frequenciesHz, a, b, ohm, c);
        if (second is null)
        {
            return;
        }

        double[] behind = new double[ohm.Length];
        second.Solve(frequenciesHz, a, b, behind, c);
        for (int k = 0; k < ohm.Length; k++)
        {
            ohm[k] = ohm[k] * bufferGain * bufferGain * (a[k] * a[k] + b[k] * b[k]) + behind[k];
        }
    }

    /// <inheritdoc/>
    public double Attenuation(double frequencyHz) =>
        first.Attenuation(frequencyHz) * (second?.Attenuation(frequencyHz) ?? 1) / (bufferGain * bufferGain);
}
