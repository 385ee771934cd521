using Coilwright.Physics.Circuit;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Recipes.Circuits;
using Coilwright.Workshop.Recipes.Reading;

namespace Coilwright.Workshop.Recipes;

/// <summary>Reads what hangs on a pickup (format coilwright.load/1) and tells every mistake at once.</summary>
public static class LoadReader
{
    public const string Format = "coilwright.load/1";

    /// <summary>The load, or every problem. Every part is optional.</summary>
    public static ReadOutcome<LoadCircuit> Read(string json) => JsonDocumentReader.Read(json, Format, Whole);

    /// <summary>As <see cref="Read"/>, of a file that was handed in: the point alone is decimal there.</summary>
    public static ReadOutcome<LoadCircuit> ReadFile(string json) => JsonDocumentReader.Read(json, Format, Whole, pointOnly: true);

    private static LoadCircuit Whole(JsonFields fields)
    {
        fields.Free("name", "notes", "tags");
        return ControlFields.Load(fields);
    }
}
