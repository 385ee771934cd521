using Coilwright.Workshop.Entry;

namespace Coilwright.Workshop.Rules;

/// <summary>The shop's rules: read, and entered anew.</summary>
public sealed class RuleBook(IRulesRecords records, TimeProvider clock)
{
    /// <summary>The rules that hold.</summary>
    public async Task<ShopRules> CurrentAsync(CancellationToken cancel) =>
        await records.NewestRulesAsync(cancel).ConfigureAwait(false) is { } newest
            ? ShopRulesReader.Read(newest.Json).Value ?? throw new InvalidOperationException("The shop's rules were kept and cannot be read any more.")
            : new ShopRules();

    /// <summary>The rules as text, to be read or changed.</summary>
    public async Task<string> TextAsync(CancellationToken cancel) => (await records.NewestRulesAsync(cancel).ConfigureAwait(false))?.Json ?? ShopRulesReader.Usual;

    /// <summary>Keeps rules, or gives every problem.</summary>
    public async Task<IReadOnlyList<Problem>> KeepAsync(Guid id, string json, string person, CancellationToken cancel)
    {
        ReadOutcome<ShopRules> read = ShopRulesReader.Read(json);
        if (read.Ok)
        {
            await records.AddRulesAsync(new ShopRulesRecord(id, json, person.Trim(), clock.GetUtcNow()), cancel).ConfigureAwait(false);
        }

        return read.Problems;
    }
}
