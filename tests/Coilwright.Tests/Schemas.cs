using System.Text.Json;
using Json.Schema;

namespace Coilwright.Tests;

/// <summary>The schemas of the repository, by file name; each may refer to the others.</summary>
internal static class Schemas
{
    private static readonly Lock s_lock = new();
    private static readonly Dictionary<string, JsonSchema> s_read = ReadAll();

    /// <summary>What a schema finds wrong with a document; empty when nothing.</summary>
    public static IReadOnlyList<string> Complaints(string schema, string json)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        lock (s_lock)
        {
            EvaluationResults results = s_read[schema]
                .Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
            return results.IsValid
                ? []
                :
                [
                    .. (results.Details ?? [])
                        .Where(detail => detail.Errors is not null)
                        .SelectMany(detail => detail.Errors!.Select(error => $"{detail.InstanceLocation}: {error.Key}: {error.Value}")),
                    "not valid",
                ];
        }
    }

    private static Dictionary<string, JsonSchema> ReadAll()
    {
        Dictionary<string, JsonSchema> read = new(StringComparer.Ordinal);
        foreach (
            string path in Directory
                .GetFiles(RepositoryFiles.PathOf("schemas"), "*.json")
                .OrderBy(path => Path.GetFileName(path) != "quantity.json")
        )
        {
            read[Path.GetFileName(path)] = JsonSchema.FromText(File.ReadAllText(path));
        }

        return read;
    }
}
