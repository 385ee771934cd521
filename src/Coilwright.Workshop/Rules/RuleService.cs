using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Coilwright.Workshop.ControlCharts;
using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Rules;

/// <summary>The shop's rules: read, and entered anew.</summary>
public sealed class RuleService(IRulesRecords records, TimeProvider clock)
{
    private static readonly JsonSerializerOptions s_written = new()
    {
        WriteIndented = true,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
    };

    /// <summary>The rules that hold.</summary>
    public Task<ShopRules> CurrentAsync(CancellationToken cancel) => CurrentAsync(records, cancel);

    /// <summary>The rules that hold, of a store.</summary>
    public static async Task<ShopRules> CurrentAsync(IRulesRecords records, CancellationToken cancel) =>
        await records.NewestAsync(cancel).ConfigureAwait(false) is { } newest
            ? ShopRulesReader.Read(newest.Json).Value
                ?? throw new InvalidOperationException("The shop's rules were kept and cannot be read any more.")
            : new ShopRules();

    /// <summary>The rules as text, to be read or changed.</summary>
    public async Task<string> TextAsync(CancellationToken cancel) =>
        (await records.NewestAsync(cancel).ConfigureAwait(false))?.Json ?? ShopRulesReader.Usual;

    /// <summary>
    /// Keeps where a chart's limits were taken anew, in the shop's rules: in place of those of the same chart. Everything else of the rules
    /// stays.
    /// </summary>
    public async Task<IReadOnlyList<Problem>> KeepLimitsAsync(Guid id, ChartLimits limits, string person, CancellationToken cancel)
    {
        JsonObject rules = JsonNode.Parse(await TextAsync(cancel).ConfigureAwait(false))!.AsObject();
        JsonArray all =
        [
            .. (rules["chartLimits"]?.AsArray() ?? []).Where(one => !AreOfTheSameChart(one!, limits)).Select(one => one!.DeepClone()),
        ];
        JsonObject kept = new()
        {
            ["recipe"] = limits.Recipe,
            ["coil"] = limits.Coil,
            ["quantity"] = limits.Quantity,
            ["since"] = limits.Since.Trim(),
            ["because"] = limits.Because.Trim(),
        };
        if (limits.Coils is { } coils)
        {
            kept["coils"] = coils;
        }

        all.Add((JsonNode)kept);
        rules["chartLimits"] = all;
        string text = rules.ToJsonString(s_written);
        return await KeepAsync(id, text, ShopRulesReader.Read(text), person, cancel).ConfigureAwait(false);
    }

    /// <summary>Keeps an instrument in the shop's rules, in place of one of the same name. Everything else of the rules stays.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="instrument">As it stands in the rules (coilwright.rules/1).</param>
    /// <param name="person">Who enters it.</param>
    /// <param name="cancel">Gives up.</param>
    /// <returns>Every problem, at the fields of the instrument; none when it was kept.</returns>
    public async Task<IReadOnlyList<Problem>> KeepInstrumentAsync(Guid id, JsonObject instrument, string person, CancellationToken cancel)
    {
        (JsonObject rules, JsonArray others) = await WithoutInstrumentAsync(NameOf(instrument), cancel).ConfigureAwait(false);
        others.Add((JsonNode)instrument);
        string text = rules.ToJsonString(s_written);
        IReadOnlyList<Problem> problems = await KeepAsync(id, text, ShopRulesReader.Read(text), person, cancel).ConfigureAwait(false);
        string path = $"instruments[{others.Count - 1}].";
        return
        [
            .. problems.Select(one =>
                one.Field.StartsWith(path, StringComparison.Ordinal) ? one with { Field = one.Field[path.Length..] } : one
            ),
        ];
    }

    /// <summary>Takes an instrument out of the shop's rules; what it read stays.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="name">Which; one that is not there changes nothing.</param>
    /// <param name="person">Who takes it out.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task RemoveInstrumentAsync(Guid id, string name, string person, CancellationToken cancel)
    {
        if (!(await CurrentAsync(cancel).ConfigureAwait(false)).Instruments.Any(one => NameKey.Same(one.Name, name)))
        {
            return;
        }

        (JsonObject rules, _) = await WithoutInstrumentAsync(name, cancel).ConfigureAwait(false);
        string text = rules.ToJsonString(s_written);
        await KeepAsync(id, text, ShopRulesReader.Read(text), person, cancel).ConfigureAwait(false);
    }

    private async Task<(JsonObject Rules, JsonArray Others)> WithoutInstrumentAsync(string name, CancellationToken cancel)
    {
        JsonObject rules = JsonNode.Parse(await TextAsync(cancel).ConfigureAwait(false))!.AsObject();
        JsonArray others =
        [
            .. (rules["instruments"]?.AsArray() ?? []).Where(one => !NameKey.Same(NameOf(one!), name)).Select(one => one!.DeepClone()),
        ];
        rules["instruments"] = others;
        return (rules, others);
    }

    private static string NameOf(JsonNode instrument) => instrument["name"]?.GetValue<string>() ?? "";

    private static bool AreOfTheSameChart(JsonNode one, ChartLimits limits) =>
        string.Equals(one["recipe"]?.GetValue<string>(), limits.Recipe, StringComparison.OrdinalIgnoreCase)
        && (one["coil"]?.GetValue<string>() ?? "*") == limits.Coil
        && (one["quantity"]?.GetValue<string>() ?? ChartSettings.Quantities[0]) == limits.Quantity;

    /// <summary>Keeps rules, or gives every problem.</summary>
    public Task<IReadOnlyList<Problem>> KeepAsync(Guid id, string json, string person, CancellationToken cancel) =>
        KeepAsync(id, json, ShopRulesReader.ReadFile(json), person, cancel);

    /// <summary>Keeps rules typed into a form, where a comma may be decimal, or gives every problem.</summary>
    /// <param name="id">Client-made id.</param>
    /// <param name="json">The rules (coilwright.rules/1).</param>
    /// <param name="seen">Id of the rules that the form was filled from; null where the shop had none.</param>
    /// <param name="person">Who enters them.</param>
    /// <param name="cancel">Gives up.</param>
    public async Task<IReadOnlyList<Problem>> KeepTypedAsync(Guid id, string json, Guid? seen, string person, CancellationToken cancel)
    {
        ReadOutcome<ShopRules> read = ShopRulesReader.Read(json);
        ShopRulesRecord? newest = await records.NewestAsync(cancel).ConfigureAwait(false);
        if (newest?.Id == id)
        {
            return read.Problems; // the same form once more
        }

        if (newest?.Id != seen)
        {
            string by = newest?.Person is { Length: > 0 } name ? name : "somebody else";
            return [.. read.Problems, new Problem("", $"the rules were changed meanwhile by {by}; look at them and keep yours again")];
        }

        return await KeepAsync(id, json, read, person, cancel).ConfigureAwait(false);
    }

    private async Task<IReadOnlyList<Problem>> KeepAsync(
        Guid id,
        string json,
        ReadOutcome<ShopRules> read,
        string person,
        CancellationToken cancel
    )
    {
        if (read.Ok)
        {
            await records.AddAsync(new ShopRulesRecord(id, json, person.Trim(), clock.GetUtcNow()), cancel).ConfigureAwait(false);
        }

        return read.Problems;
    }
}
