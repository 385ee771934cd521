namespace Coilwright.Workshop.Rules;

/// <summary>What a store must do for the shop's rules.</summary>
public interface IRulesRecords
{
    /// <summary>The newest rules; null before the first.</summary>
    Task<ShopRulesRecord?> NewestRulesAsync(CancellationToken cancel);

    /// <summary>Adds rules; the same id twice is kept once.</summary>
    Task AddRulesAsync(ShopRulesRecord rules, CancellationToken cancel);
}
