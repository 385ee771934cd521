using System.Numerics;
using System.Runtime.InteropServices;

namespace Coilwright.Physics.Circuit.Networks;

/// <summary>One network ready to be solved at many frequencies, several at a time in the processor's vector registers. Not for two threads at once.</summary>
/// <remarks>
/// Source: Kirchhoff's laws. Branch row: u(a) − u(b) − Σ Z·i = −E; node row: Σ currents leaving = 0. Re(Z seen at the output) gives the thermal noise [Nyquist].
/// Checked against a circuit simulator on random networks of every kind of part, against the ladder's closed form, and by scaling, reciprocity and limits.
/// </remarks>
internal sealed class NetworkCurve : IGainCurve
{
    /// <summary>Frequencies that go through the steps together: their whole matrix then stays in the nearest cache.</summary>
    private const int Block = 64;

    private readonly SolvePlan plan;
    private readonly SolvePlan.Step[] steps;
    private readonly NetworkFill fill;
    private readonly Vector<double>[] places;
    private readonly double[] one = new double[4];

    public NetworkCurve(NetworkSketch sketch, int output)
    {
        IsSilent = sketch.Root(output) == NetworkSketch.Ground;
        fill = new NetworkFill(sketch, output);
        plan = fill.Plan;
        steps = [.. plan.Steps];
        places = new Vector<double>[plan.PlaceCount * 2 * Width];
    }

    /// <summary>True when the output is shorted to ground.</summary>
    public bool IsSilent { get; }

    private static int Width => Block / Vector<double>.Count;

    /// <summary>Output voltage for 1 V induced, and the impedance seen between the output's wires, at each frequency.</summary>
    public void Solve(ReadOnlySpan<double> frequenciesHz, Span<double> re, Span<double> im, Span<double> ohmRe, Span<double> ohmIm)
    {
        Span<double> padded = stackalloc double[Block];
        for (int from = 0; from < frequenciesHz.Length; from += Block)
        {
            int count = Math.Min(Block, frequenciesHz.Length - from);
            int vectors = (count + Vector<double>.Count - 1) / Vector<double>.Count;
            frequenciesHz.Slice(from, count).CopyTo(padded);
            padded[count..].Fill(padded[count - 1]);
            fill.Write(places, Width, padded, vectors);
            Run(vectors);
            int pivot = plan.Slot(plan.Unknowns - 1, plan.Unknowns - 1);
            Invert(plan.Reciprocal, pivot, vectors);
            Multiply(plan.Factor, plan.Reciprocal, plan.Drive(plan.Unknowns - 1), vectors);
            Copy(plan.Factor, 0, re.Slice(from, count));
            Copy(plan.Factor, 1, im.Slice(from, count));
            Copy(plan.Reciprocal, 0, ohmRe.Slice(from, count));
            Copy(plan.Reciprocal, 1, ohmIm.Slice(from, count));
        }
    }

    /// <inheritdoc/>
    public double Attenuation(double frequencyHz)
    {
        Span<double> result = one;
        Solve([frequencyHz], result[..1], result[1..2], result[2..3], result[3..]);
        return 1 / Math.Max(result[0] * result[0] + result[1] * result[1], 1e-200);
    }

    private void Run(int vectors)
    {
        foreach (SolvePlan.Step step in steps)
        {
            switch (step.Work)
            {
                case SolvePlan.Work.Invert:
                    Invert(step.Target, step.A, vectors);
                    break;
                case SolvePlan.Work.Multiply:
                    Multiply(step.Target, step.A, step.B, vectors);
                    break;
                default:
                    Subtract(step.Target, step.A, step.B, vectors);
                    break;
            }
        }
    }

    private Span<Vector<double>> Part(int place, int part, int vectors) => places.AsSpan((2 * place + part) * Width, vectors);

    private void Copy(int place, int part, Span<double> to) =>
        MemoryMarshal.Cast<Vector<double>, double>(Part(place, part, Width))[..to.Length].CopyTo(to);

    private void Invert(int target, int a, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors), ti = Part(target, 1, vectors), ar = Part(a, 0, vectors), ai = Part(a, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> r = ar[v], i = ai[v], scale = Vector<double>.One / (r * r + i * i);
            tr[v] = r * scale;
            ti[v] = -i * scale;
        }
    }

    private void Multiply(int target, int a, int b, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors), ti = Part(target, 1, vectors), ar = Part(a, 0, vectors), ai = Part(a, 1, vectors), br = Part(b, 0, vectors), bi = Part(b, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> p = ar[v], q = ai[v], r = br[v], s = bi[v];
            tr[v] = p * r - q * s;
            ti[v] = p * s + q * r;
        }
    }

    private void Subtract(int target, int a, int b, int vectors)
    {
        Span<Vector<double>> tr = Part(target, 0, vectors), ti = Part(target, 1, vectors), ar = Part(a, 0, vectors), ai = Part(a, 1, vectors), br = Part(b, 0, vectors), bi = Part(b, 1, vectors);
        for (int v = 0; v < tr.Length; v++)
        {
            Vector<double> p = ar[v], q = ai[v], r = br[v], s = bi[v];
            tr[v] -= p * r - q * s;
            ti[v] -= p * s + q * r;
        }
    }
}
