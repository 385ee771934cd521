using System.Numerics;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>A circuit's network, and behind a buffer, if there is one, the network of cable and input.</summary>
internal sealed class TwoStages : IGainCurve
{
    private readonly NetworkCurve first;
    private readonly NetworkCurve? second;
    private readonly double bufferGain = 1;

    public TwoStages(GuitarCircuit circuit)
    {
        CircuitSketch sketch = CircuitSketch.FromCircuit(circuit);
        first = new NetworkCurve(sketch.Sketch, sketch.Output);
        if (circuit.Load.Buffer is { } buffer)
        {
            NetworkSketch behind = new();
            int output = behind.Node("out");
            behind.Branch(
                "buffer",
                NetworkSketch.Ground,
                output,
                new LumpedPickup(Require.InRange(buffer.OutputOhm, 1e-3, 1e9), 0, 0),
                1,
                1
            );
            CircuitSketch.CableAndInput(behind, output, circuit.Load);
            second = new NetworkCurve(behind, output);
            bufferGain = Require.InRange(buffer.Gain, 1e-3, 1e3);
        }
    }

    public bool IsSilent => first.IsSilent;

    /// <summary>Writes the points of a response.</summary>
    public void Write(Span<ResponsePoint> points, ReadOnlySpan<double> frequenciesHz, double reference)
    {
        for (int from = 0; from < points.Length; from += NetworkCurve.MostAtOnce)
        {
            int count = Math.Min(NetworkCurve.MostAtOnce, points.Length - from);
            ReadOnlySpan<double> block = frequenciesHz.Slice(from, count);
            first.SolveBlock(block);
            if (second is not null)
            {
                second.SolveBlock(block);
                Through(count);
            }

            NetworkCurve last = second ?? first;
            PolarPoints.Write(points.Slice(from, count), block, last.GainRe, last.GainIm, last.OhmRe, last.OhmIm, reference);
        }
    }

    /// <summary>Multiplies the second network's gain by the first's and the buffer's.</summary>
    private void Through(int count)
    {
        Span<Vector<double>> re = second!.GainRe,
            im = second.GainIm;
        for (int v = 0; v * Vector<double>.Count < count; v++)
        {
            Vector<double> r = re[v],
                i = im[v];
            re[v] = (r * first.GainRe[v] - i * first.GainIm[v]) * bufferGain;
            im[v] = (r * first.GainIm[v] + i * first.GainRe[v]) * bufferGain;
        }
    }

    /// <summary>Squared noise density at the output over 4kT, Ω: what stands at the first output comes through the buffer.</summary>
    public void NoiseOhm(ReadOnlySpan<double> frequenciesHz, Span<double> ohm)
    {
        double[] a = new double[ohm.Length],
            b = new double[ohm.Length],
            c = new double[ohm.Length];
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
