using System.Numerics;
using Coilwright.Physics.Circuit;

namespace Coilwright.Physics.Tests.Circuit;

/// <summary>
/// Random networks, and a second method for them: node equations solved by elimination, part by part, knowing nothing of the ladder
/// formula.
/// </summary>
internal static class Networks
{
    public static readonly Gen<LumpedPickup> Pickup = Gen.Select(
        Gen.Double[100, 20e3],
        Gen.Double[0.05, 12],
        Gen.Double[20e-12, 400e-12],
        Gen.Select(Gen.Double[0.05, 2], Gen.Double[5e3, 500e3], (l, r) => new EddyBranch(l, r)).Array[0, 3],
        Gen.Double[100e3, 5e6],
        Gen.Bool,
        (r, l, c, eddy, loss, lossy) => new LumpedPickup(r, l, c) { Eddy = eddy, ParallelLossOhm = lossy ? loss : null }
    );

    public static readonly Gen<LoadCircuit> Load = Gen.Select(
        Gen.Double[100e3, 1e6],
        Gen.Int[1, 20],
        Gen.Double[100e3, 1e6],
        Gen.Double[1e-9, 100e-9],
        Gen.Int[0, 20],
        Gen.Double[50e-12, 2e-9],
        Gen.Double[50e3, 10e6],
        Gen.Int[0, 15],
        (track, setting, tone, capacitor, toneSetting, cable, input, parts) =>
            new LoadCircuit
            {
                Volume = (parts & 1) != 0 ? new VolumeControl(track, setting / 20.0) : null,
                Tone = (parts & 2) != 0 ? new ToneControl(tone, capacitor, toneSetting / 20.0) : null,
                CableCapacitanceF = (parts & 4) != 0 ? cable : 0,
                InputResistanceOhm = (parts & 8) != 0 ? input : null,
                InputCapacitanceF = (parts & 12) == 12 ? 20e-12 : 0,
            }
    );

    /// <summary>Output over source, and the output impedance.</summary>
    public static (Complex Gain, double ImpedanceOhm) Solve(LumpedPickup pickup, LoadCircuit load, double frequencyHz)
    {
        // Joints without resistance share a node. The source enters as a current through the series branch.
        ToneControl tone = load.Tone ?? default;
        VolumeControl volume = load.Volume ?? new VolumeControl(0, 1);
        double toneOhm = tone.ResistanceOhm * tone.Setting,
            above = volume.ResistanceOhm * (1 - volume.Setting);
        int nodes = 1,
            output = above > 0 ? nodes++ : 0,
            toneNode = toneOhm > 0 ? nodes++ : 0;
        Complex[,] y = new Complex[nodes, nodes];
        Complex s = new(0, 2 * Math.PI * frequencyHz),
            series = 1 / pickup.ImpedanceOhm(frequencyHz);
        Tie(y, 0, -1, series);
        Tie(y, 0, -1, s * pickup.CapacitanceF + (pickup.ParallelLossOhm is { } loss ? 1 / loss : 0));
        Tie(y, toneNode, -1, s * tone.CapacitorF);
        if (toneNode != 0)
        {
            Tie(y, 0, toneNode, 1 / toneOhm);
        }

        if (output != 0)
        {
            Tie(y, 0, output, 1 / above);
        }

        Tie(y, output, -1, load.Volume is null ? 0 : 1 / (volume.ResistanceOhm * volume.Setting));
        Tie(y, output, -1, s * (load.CableCapacitanceF + load.InputCapacitanceF) + (load.InputResistanceOhm is { } input ? 1 / input : 0));
        Complex[] sourceCurrent = new Complex[nodes],
            probeCurrent = new Complex[nodes];
        sourceCurrent[0] = series;
        probeCurrent[output] = 1;
        return (Eliminate(y, sourceCurrent)[output], Eliminate(y, probeCurrent)[output].Magnitude);
    }

    private static void Tie(Complex[,] y, int from, int to, Complex admittance)
    {
        y[from, from] += admittance;
        if (to >= 0)
        {
            y[to, to] += admittance;
            y[from, to] -= admittance;
            y[to, from] -= admittance;
        }
    }

    private static Complex[] Eliminate(Complex[,] matrix, Complex[] right)
    {
        Complex[,] a = (Complex[,])matrix.Clone();
        Complex[] b = [.. right];
        int n = b.Length;
        for (int k = n - 1; k >= 0; k--)
        {
            for (int i = 0; i < k; i++)
            {
                Complex factor = a[i, k] / a[k, k];
                for (int j = 0; j <= k; j++)
                {
                    a[i, j] -= factor * a[k, j];
                }

                b[i] -= factor * b[k];
            }
        }

        for (int k = 0; k < n; k++)
        {
            for (int j = 0; j < k; j++)
            {
                b[k] -= a[k, j] * b[j];
            }

            b[k] /= a[k, k];
        }

        return b;
    }
}
