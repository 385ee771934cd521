using Coilwright.Physics.Circuit;
using Coilwright.Physics.Circuit.Networks;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Formats.Circuits;

/// <summary>Reads a whole circuit of pickups, selector and load (format coilwright.circuit/1) and tells every mistake at once.</summary>
public static class CircuitReader
{
    public const string Format = "coilwright.circuit/1";

    private const int MostPickups = 8;
    private static readonly string[] s_joined = ["parallel", "series"];

    /// <summary>The circuit, or every problem.</summary>
    public static ReadOutcome<GuitarCircuit> Read(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static GuitarCircuit Whole(JsonFields fields)
    {
        fields.Free("name", "notes", "tags");
        IReadOnlyList<CircuitPickup?> pickups = fields.Objects(
            "pickups",
            PickupFields.Read,
            MostPickups,
            "[ { \"name\": \"bridge\", \"coils\": [ … ] } ]"
        );
        if (pickups.Count == 0 && fields.Has("pickups"))
        {
            fields.Problems.Add(fields.PathOf("pickups"), "at least one pickup is needed");
        }

        string[] names =
        [
            .. pickups.Select((pickup, i) => pickup?.Name is { Length: > 0 } name ? name : FormattableString.Invariant($"pickup {i + 1}")),
        ];
        foreach (
            string twice in names.GroupBy(name => name, StringComparer.Ordinal).Where(group => group.Count() > 1).Select(group => group.Key)
        )
        {
            fields.Problems.Add(fields.PathOf("pickups"), "two pickups have one name", twice);
        }

        IReadOnlyList<int> selected = Selected(fields, names);
        string? joined = fields.Word("joined", s_joined);
        LoadCircuit load = fields.Object("load", ControlFields.Load) ?? LoadCircuit.None;
        return new GuitarCircuit([.. pickups.OfType<CircuitPickup>()], load)
        {
            Selected = selected,
            Joined = joined == "series" ? Joining.Series : Joining.Parallel,
        };
    }

    /// <summary>Numbers of the pickups named; all when none are named.</summary>
    private static List<int> Selected(JsonFields fields, string[] names)
    {
        if (!fields.Has("selected"))
        {
            fields.Free("selected");
            return [.. Enumerable.Range(0, names.Length)];
        }

        List<int> numbers = [];
        foreach (
            Named? named in fields.Items(
                "selected",
                (item, path) =>
                    new Named(item.ValueKind == System.Text.Json.JsonValueKind.String ? item.GetString()! : JsonFields.Told(item), path),
                MostPickups
            )
        )
        {
            int number = Array.IndexOf(names, named.Name);
            if (number < 0 || numbers.Contains(number))
            {
                fields.Problems.Add(
                    named.Path,
                    number < 0 ? "no pickup has this name" : "this pickup is named twice",
                    named.Name,
                    string.Join(", ", names)
                );
            }
            else
            {
                numbers.Add(number);
            }
        }

        if (numbers.Count == 0)
        {
            fields.Problems.Add(fields.PathOf("selected"), "at least one pickup must be let through", null, string.Join(", ", names));
        }

        return numbers;
    }

    private sealed record Named(string Name, string Path);
}
