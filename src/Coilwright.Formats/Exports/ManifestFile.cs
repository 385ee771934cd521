using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using Coilwright.Physics;
using Coilwright.Workshop.Exports;

namespace Coilwright.Formats.Exports;

/// <summary>What an export says of itself, as its file: coilwright.export/1.</summary>
public static class ManifestFile
{
    /// <summary>Name of the file.</summary>
    public const string Name = "manifest.json";

    /// <summary>Its format.</summary>
    public const string Format = "coilwright.export/1";

    private static readonly ExportColumn s_time = new("created", "", ExportKind.Time);

    private static readonly JsonSerializerOptions s_options = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        RespectRequiredConstructorParameters = true,
        RespectNullableAnnotations = true,
        UnmappedMemberHandling = JsonUnmappedMemberHandling.Disallow,
    };

    /// <summary>Writes it.</summary>
    public static string Write(ExportManifest manifest) =>
        JsonSerializer.Serialize(
            new Document(
                Format,
                new ShopPart(manifest.ShopName, ExportCells.Text(manifest.CreatedUtc)),
                manifest.Files,
                manifest.Documents
            ),
            s_options
        ) + "\n";

    /// <summary>Reads it.</summary>
    /// <param name="text">The file.</param>
    /// <param name="problems">Takes what is wrong.</param>
    /// <returns>Null when something is.</returns>
    public static ExportManifest? Read(string text, ImportProblems problems)
    {
        Document? read = null;
        try
        {
            read = JsonSerializer.Deserialize<Document>(text, s_options);
        }
        catch (JsonException wrong)
        {
            problems.Add(Name, (wrong.LineNumber ?? -1) + 1, wrong.Path ?? "", wrong.Message.Split(" Path:")[0].Trim());
            return null;
        }

        if (read is null || read.Format != Format)
        {
            problems.Add(Name, 0, "format", "this is another format", read?.Format, Format);
            return null;
        }

        bool isTime = ExportCells.TryRead(s_time, read.Shop.Created, out object? created, out string allowed);
        if (!isTime)
        {
            problems.Add(Name, 0, "shop.created", "this is no time", read.Shop.Created, allowed);
        }

        if (string.IsNullOrWhiteSpace(read.Shop.Name))
        {
            problems.Add(Name, 0, "shop.name", "the shop has no name");
        }

        CheckFiles(read.Files, problems);
        return problems.Count == 0 ? new ExportManifest(read.Shop.Name, (DateTimeOffset)created!, read.Files, read.Documents) : null;
    }

    private static void CheckFiles(IReadOnlyList<ExportedFile> files, ImportProblems problems)
    {
        string[] known = [.. ExportTables.All.Select(table => table.File)];
        foreach (ExportedFile file in files.Where(file => !known.Contains(file.Name, StringComparer.Ordinal)))
        {
            string near = string.Join(", ", NearNames.Find(file.Name, known, 3));
            problems.Add(Name, 0, "files", "this file is none of an export", file.Name, near.Length > 0 ? near : string.Join(", ", known));
        }

        foreach (string missing in known.Where(name => !files.Any(file => file.Name == name)))
        {
            problems.Add(Name, 0, "files", "this file is not named", missing);
        }

        foreach (IGrouping<string, ExportedFile> twice in files.GroupBy(file => file.Name).Where(same => same.Count() > 1))
        {
            problems.Add(Name, 0, "files", "this file is named twice", twice.Key);
        }
    }

    private sealed record ShopPart(string Name, string Created);

    private sealed record Document(
        string Format,
        ShopPart Shop,
        IReadOnlyList<ExportedFile> Files,
        IReadOnlyList<ExportedDocument> Documents
    );
}
