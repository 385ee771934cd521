using System.Text.Json;

namespace Coilwright.Analysis.Tests.Charts;

/// <summary>Published figures under tests/Reference/charts; each file names its sources.</summary>
internal static class ChartReference
{
    public static JsonElement Read(string file) => JsonDocument.Parse(File.ReadAllText(PathOf(file))).RootElement;

    public static string PathOf(string file) => Path.Combine(AppContext.BaseDirectory, "Reference", "charts", file);

    public static double[] Numbers(JsonElement element) => [.. element.EnumerateArray().Select(value => value.GetDouble())];
}
