using System.Text.Json;
using Coilwright.Workshop.Entry;
using Coilwright.Workshop.Machines;
using Coilwright.Workshop.Recipes;
using Coilwright.Workshop.Rules;

namespace Coilwright.Workshop.Files;

/// <summary>What came of one file: what it holds and where that stands now, or every problem.</summary>
/// <param name="FileName">As it was called.</param>
/// <param name="Kind">What it holds, in a word: "recipe", "winder", "rules"; empty when nobody can tell.</param>
/// <param name="Name">Name of what it holds.</param>
/// <param name="RecipeId">The recipe it became; null for anything else.</param>
/// <param name="Problems">What is wrong with it; then nothing of it was kept.</param>
public sealed record FileOutcome(string FileName, string Kind, string Name, Guid? RecipeId, IReadOnlyList<Problem> Problems);

/// <summary>Takes in files that were written elsewhere: each says itself what it is.</summary>
public sealed class FileIntake(RecipeService recipes, MachineService machines, RuleService rules)
{
    private static readonly string s_formats = string.Join(", ", RecipeReader.Format, MachineReader.Format, ShopRulesReader.Format);

    /// <summary>Keeps what a file holds, or gives every problem.</summary>
    /// <param name="fileName">What the file is called.</param>
    /// <param name="json">Its contents.</param>
    /// <param name="person">Who brings it in.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<FileOutcome> KeepAsync(string fileName, string json, string person, CancellationToken cancel)
    {
        if (About(json) is not { } about)
        {
            return new(fileName, "", "", null, RecipeReader.ReadFile(json).Problems); // any reader says where a document is broken
        }

        (string format, string name) = about;
        string kind = KindOf(format);
        if (kind == KindOf(MachineReader.Format))
        {
            return new(
                fileName,
                "winder",
                name,
                null,
                await machines.KeepAsync(Guid.NewGuid(), json, person, cancel).ConfigureAwait(false)
            );
        }

        if (kind == KindOf(ShopRulesReader.Format))
        {
            return new(fileName, "rules", "", null, await rules.KeepAsync(Guid.NewGuid(), json, person, cancel).ConfigureAwait(false));
        }

        if (kind == KindOf(RecipeReader.Format))
        {
            return await RecipeAsync(fileName, json, name, person, cancel).ConfigureAwait(false);
        }

        string said = format.Length == 0 ? "the file does not say what it holds" : "a shop takes in no file of this kind";
        return new(fileName, "", name, null, [new Problem("format", said, format.Length == 0 ? null : format, s_formats)]);
    }

    private async Task<FileOutcome> RecipeAsync(string fileName, string json, string name, string person, CancellationToken cancel)
    {
        Guid id = Guid.NewGuid();
        IReadOnlyList<Problem> wrong = RecipeReader.ReadFile(json).Problems;
        wrong = wrong.Count > 0 ? wrong : (await recipes.SaveAsync(id, json, "", person, 0, cancel).ConfigureAwait(false)).Problems;
        return new(fileName, "recipe", name, wrong.Count > 0 ? null : id, wrong);
    }

    private static string KindOf(string format) => format.Split('/')[0];

    /// <summary>Format and name that a document states; null for what is no document.</summary>
    private static (string Format, string Name)? About(string json)
    {
        try
        {
            using JsonDocument document = JsonDocument.Parse(json.TrimStart('\uFEFF'));
            return document.RootElement.ValueKind == JsonValueKind.Object
                ? (TextOf(document.RootElement, "format"), TextOf(document.RootElement, "name"))
                : null;
        }
        catch (Exception wrong) when (wrong is JsonException or InvalidOperationException or ArgumentException)
        {
            return null;
        }
    }

    private static string TextOf(JsonElement root, string name) =>
        root.TryGetProperty(name, out JsonElement value) && value.ValueKind == JsonValueKind.String ? value.GetString()! : "";
}
