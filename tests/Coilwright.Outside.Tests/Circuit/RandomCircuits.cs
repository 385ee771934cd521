using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;

namespace Coilwright.Outside.Tests.Circuit;

/// <summary>Random circuits that between them hold every kind of part; the seed makes them the same each time.</summary>
internal sealed class RandomCircuits(int seed)
{
    private readonly Random random = new(seed);

    public GuitarCircuit Next()
    {
        CircuitPickup[] pickups = [.. Enumerable.Range(0, random.Next(1, 4)).Select(_ => Pickup())];
        int[] order = [.. Enumerable.Range(0, pickups.Length).OrderBy(_ => random.Next())];
        return new GuitarCircuit(
            pickups,
            new LoadCircuit
            {
                Volume = random.Next(4) > 0 ? Volume() : null,
                Tone = random.Next(4) > 0 ? Tone() : null,
                Buffer =
                    random.Next(5) == 0
                        ? new BufferStage(Log(200e3, 20e6), random.Next(2) * Log(5e-12, 50e-12), Log(50, 10e3), Log(0.5, 4))
                        : null,
                CableCapacitanceF = random.Next(4) > 0 ? Log(100e-12, 1.5e-9) : 0,
                InputResistanceOhm = random.Next(4) > 0 ? Log(100e3, 10e6) : null,
                InputCapacitanceF = random.Next(2) == 0 ? Log(5e-12, 300e-12) : 0,
            }
        )
        {
            Selected = [.. order.Take(random.Next(1, pickups.Length + 1))],
            Joined = random.Next(4) == 0 ? Joining.Series : Joining.Parallel,
        };
    }

    private CircuitPickup Pickup()
    {
        CircuitCoil[] coils = [.. Enumerable.Range(0, random.Next(1, 4)).Select(Coil)];
        List<MutualInductance> mutual = [];
        for (int i = 1; i < coils.Length; i++)
        {
            double limit = Math.Sqrt(((LumpedPickup)coils[i - 1].Branch).InductanceH * ((LumpedPickup)coils[i].Branch).InductanceH);
            mutual.Add(new MutualInductance(i - 1, i, (random.NextDouble() - 0.5) * 0.8 * limit));
        }

        return new CircuitPickup(coils)
        {
            Mutual = random.Next(4) > 0 ? mutual : [],
            Joined = random.Next(3) == 0 ? Joining.Parallel : Joining.Series,
            OnlyCoil = random.Next(5) == 0 ? random.Next(coils.Length) : null,
            Reversed = random.Next(4) == 0,
            Volume = random.Next(3) == 0 ? Volume() with { FromWiper = random.Next(2) == 0 } : null,
            Tone = random.Next(4) == 0 ? Tone() : null,
        };
    }

    /// <summary>The first coil of a pickup hears the string; later ones may be dummies or turned.</summary>
    private CircuitCoil Coil(int number)
    {
        EddyBranch[] eddy = [.. Enumerable.Range(0, random.Next(3)).Select(_ => new EddyBranch(Log(0.05, 1), Log(5e3, 300e3)))];
        return new CircuitCoil(
            new LumpedPickup(Log(500, 10e3), Log(0.3, 6), 0) { Eddy = eddy },
            random.Next(6) == 0 ? 0 : Log(30e-12, 300e-12)
        )
        {
            ParallelLossOhm = random.Next(3) == 0 ? Log(200e3, 5e6) : null,
            Level =
                number == 0
                    ? 1
                    : random.Next(4) switch
                    {
                        0 => 0,
                        1 => -Log(0.3, 0.9),
                        _ => Log(0.3, 3),
                    },
            Reversed = number > 0 && random.Next(3) == 0,
            TapShare = random.Next(6) == 0 ? 0.2 + 0.7 * random.NextDouble() : null,
        };
    }

    private VolumeControl Volume() =>
        new(Log(100e3, 1e6), Taper().Share(random.Next(4) == 0 ? 1 : 0.15 + 0.85 * random.NextDouble()))
        {
            Retainer = random.Next(4) switch
            {
                0 => new TrebleRetainer(null, Log(100e-12, 2e-9), false),
                1 => new TrebleRetainer(Log(50e3, 500e3), Log(100e-12, 2e-9), random.Next(2) == 0),
                2 when random.Next(2) == 0 => new TrebleRetainer(Log(50e3, 500e3), null, false),
                _ => null,
            },
        };

    private ToneControl Tone() => new(Log(100e3, 1e6), Log(1e-9, 100e-9), random.Next(5) == 0 ? 0 : Taper().Share(random.NextDouble()));

    private Taper Taper() =>
        random.Next(3) switch
        {
            0 => Physics.Circuit.Taper.Linear,
            1 => Physics.Circuit.Taper.Logarithmic(0.05 + 0.2 * random.NextDouble()),
            _ => Physics.Circuit.Taper.Measured([
                (0, 0),
                (0.3, 0.05 + 0.1 * random.NextDouble()),
                (0.7, 0.3 + 0.2 * random.NextDouble()),
                (1, 1),
            ]),
        };

    private double Log(double from, double to) => from * Math.Pow(to / from, random.NextDouble());
}
