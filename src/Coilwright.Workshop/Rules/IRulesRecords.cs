namespace Coilwright.Workshop.Rules;

/// <summary>What a store must do for the shop's rules.</summary>
public interface IRulesRecords
{
    /// <summary>The newest rules; null before the first.</summary>
    Task<ShopRulesRecord?> NewestAsync(CancellationToken cancel);

    /// <summary>Adds rules; the same id twice is kept once.</summary>
    Task AddAsync(ShopRulesRecord rules, CancellationToken cancel);
}
