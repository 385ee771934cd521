using Coilwright.Physics.Winding;

namespace Coilwright.Physics.Tests.Lay;

public sealed class LayInvariantTests
{
    private static readonly Gen<(LaySpec, ulong)> Specs = Gen.Select(
        Gen.Select(
            Gen.Double[40e-6, 120e-6],
            Gen.Double[3e-3, 14e-3],
            Gen.Int[1, 3000],
            Gen.Double[0.5, 8],
            Gen.Double[0, 8],
            (d, height, turns, pitch, jitter) => new LaySpec(d, height, turns, pitch * d, jitter < 1 ? 0 : jitter * d)
        ),
        Gen.ULong
    );

    [Fact] // Checked against every pair within reach by a method of its own: a sort along the window.
    public void No_two_turns_overlap() =>
        Specs.ForAll((spec, seed) => ClosestPairM(LaySimulation.Run(spec, seed)) >= spec.OverallM * (1 - 1e-6), count: 60);

    [Fact]
    public void Every_turn_lies_between_the_flanges_and_above_the_former() =>
        Specs.ForAll(
            (spec, seed) =>
            {
                LaidSection section = LaySimulation.Run(spec, seed);
                double radius = spec.OverallM / 2 * (1 - 1e-6);
                return section.XM.All(x => x >= radius && x <= spec.WindingHeightM - radius) && section.YM.All(y => y >= radius);
            },
            count: 60
        );

    [Fact] // On the former, or on a turn below with another (or a flange) at the other side.
    public void Every_turn_is_held() =>
        Specs.ForAll(
            (spec, seed) =>
            {
                LaidSection section = LaySimulation.Run(spec, seed);
                return Enumerable.Range(0, spec.Turns).All(i => IsHeld(section, i));
            },
            count: 20
        );

    [Fact]
    public void The_same_seed_gives_the_same_section() =>
        Specs.ForAll(
            (spec, seed) =>
            {
                LaidSection first = LaySimulation.Run(spec, seed);
                LaidSection second = LaySimulation.Run(spec, seed);
                return first.XM.SequenceEqual(second.XM)
                    && first.YM.SequenceEqual(second.YM)
                    && first.Neighbours.SequenceEqual(second.Neighbours);
            },
            count: 20
        );

    // π/√12: densest packing of equal circles (A. Thue; L. Fejes Tóth). Finite sections can only be looser, as build is read at high turns.
    [Fact]
    public void Packing_stays_below_the_densest_packing_of_circles() =>
        Specs.ForAll((spec, seed) => LaySimulation.Run(spec, seed).PackingFactor < Math.PI / Math.Sqrt(12), count: 60);

    [Fact] // A section scales with the wire: same numbers in diameters, only the caliper's jaw stays.
    public void Doubling_every_length_doubles_the_section() =>
        Specs.ForAll(
            (spec, seed) =>
            {
                LaidSection one = LaySimulation.Run(spec, seed);
                LaidSection two = LaySimulation.Run(
                    new(2 * spec.OverallM, 2 * spec.WindingHeightM, spec.Turns, 2 * spec.PitchM, 2 * spec.JitterM),
                    seed
                );
                return one.XM.Zip(two.XM, (a, b) => Math.Abs(2 * a - b)).Max() < 1e-9 * spec.WindingHeightM;
            },
            count: 20
        );

    private static double ClosestPairM(LaidSection section)
    {
        int[] order = [.. Enumerable.Range(0, section.XM.Count).OrderBy(i => section.XM[i])];
        double closest = double.PositiveInfinity;
        for (int a = 0; a < order.Length; a++)
        {
            for (int b = a + 1; b < order.Length && section.XM[order[b]] - section.XM[order[a]] < section.Spec.OverallM; b++)
            {
                double dx = section.XM[order[b]] - section.XM[order[a]];
                double dy = section.YM[order[b]] - section.YM[order[a]];
                closest = Math.Min(closest, Math.Sqrt(dx * dx + dy * dy));
            }
        }

        return closest;
    }

    private static bool IsHeld(LaidSection section, int i)
    {
        double d = section.Spec.OverallM;
        double slack = 1e-5 * d;
        bool left = section.XM[i] <= d / 2 + slack;
        bool right = section.XM[i] >= section.Spec.WindingHeightM - d / 2 - slack;
        bool below = false;
        for (int j = 0; j < i; j++)
        {
            double dx = section.XM[j] - section.XM[i];
            double dy = section.YM[j] - section.YM[i];
            if (Math.Abs(dx) < 1.01 * d && Math.Abs(Math.Sqrt(dx * dx + dy * dy) - d) < slack)
            {
                left |= dx <= slack;
                right |= dx >= -slack;
                below |= dy < 0;
            }
        }

        return section.YM[i] <= d / 2 + slack || (left && right && below);
    }
}
