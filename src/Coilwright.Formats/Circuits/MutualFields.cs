using System.Text.Json;
using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Circuits;

/// <summary>Mutual inductances between a pickup's coils, and the check that they are possible together.</summary>
public static class MutualFields
{
    public static IReadOnlyList<MutualInductance> Read(JsonFields fields, CircuitCoil[] coils, bool complete)
    {
        List<MutualInductance> mutual =
        [
            .. fields
                .Objects("mutual", one => Of(one, coils), 28)
                .OfType<Found>()
                .Where(found => found.First >= 0)
                .Select(found => new MutualInductance(found.First, found.Second, found.H)),
        ];
        foreach (
            IGrouping<(int, int), MutualInductance> twice in mutual
                .GroupBy(one => (Math.Min(one.First, one.Second), Math.Max(one.First, one.Second)))
                .Where(group => group.Count() > 1)
        )
        {
            fields.Problems.Add(
                fields.PathOf("mutual"),
                "two coils are coupled twice",
                $"{coils[twice.Key.Item1].Name}, {coils[twice.Key.Item2].Name}"
            );
        }

        if (
            complete
            && mutual.Count > 0
            && mutual.TrueForAll(one => !double.IsNaN(one.InductanceH))
            && Array.TrueForAll(coils, coil => !double.IsNaN(Henry(coil)))
            && !Possible(coils, mutual)
        )
        {
            fields.Problems.Add(
                fields.PathOf("mutual"),
                "no coils can be coupled like this: the mutual inductance must stay below the root of the two inductances"
            );
        }

        return mutual;
    }

    private static double Henry(CircuitCoil coil) => ((LumpedPickup)coil.Branch).InductanceH;

    private static Found Of(JsonFields fields, CircuitCoil[] coils)
    {
        string[] names =
        [
            .. fields
                .Items(
                    "coils",
                    (item, _) => item.ValueKind == JsonValueKind.String ? item.GetString() : JsonFields.Told(item),
                    2,
                    "[ \"slug\", \"screw\" ]"
                )
                .OfType<string>(),
        ];
        int[] numbers = [.. names.Select(name => Array.FindIndex(coils, coil => coil.Name == name))];
        bool two = numbers.Length == 2 && numbers[0] >= 0 && numbers[1] >= 0 && numbers[0] != numbers[1];
        if (!two && fields.Has("coils"))
        {
            fields.Problems.Add(
                fields.PathOf("coils"),
                "two different coils of this pickup are needed",
                string.Join(", ", names),
                string.Join(", ", coils.Select(coil => coil.Name))
            );
        }

        double henry;
        if (fields.Has("coupling"))
        {
            fields.Refuse("inductance", "give either the inductance or the coupling");
            double coupling = fields.Number("coupling", -0.999, 0.999) ?? 0;
            henry = two ? coupling * Math.Sqrt(Henry(coils[numbers[0]]) * Henry(coils[numbers[1]])) : double.NaN;
        }
        else
        {
            fields.Free("coupling");
            henry = fields.Required("inductance", Allowed.Mutual).Si;
        }

        return two ? new Found(numbers[0], numbers[1], henry) : new Found(-1, -1, henry);
    }

    /// <summary>Stored energy must be positive whatever the currents: the matrix of inductances has a Cholesky factor.</summary>
    private static bool Possible(CircuitCoil[] coils, List<MutualInductance> mutual)
    {
        int count = coils.Length;
        double[,] matrix = new double[count, count];
        for (int i = 0; i < count; i++)
        {
            matrix[i, i] = Henry(coils[i]);
        }

        foreach (MutualInductance one in mutual)
        {
            matrix[Math.Max(one.First, one.Second), Math.Min(one.First, one.Second)] = one.InductanceH;
        }

        for (int j = 0; j < count; j++)
        {
            for (int k = 0; k < j; k++)
            {
                for (int i = j; i < count; i++)
                {
                    matrix[i, j] -= matrix[i, k] * matrix[j, k];
                }
            }

            if (!(matrix[j, j] > 0))
            {
                return false;
            }

            double root = Math.Sqrt(matrix[j, j]);
            for (int i = j; i < count; i++)
            {
                matrix[i, j] /= root;
            }
        }

        return true;
    }

    private sealed record Found(int First, int Second, double H);
}
