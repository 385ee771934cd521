namespace Coilwright.Workshop.Secrets;

/// <summary>Says of a recipe, with all its revisions, that it is a secret, or is none any more. The newest holds.</summary>
public sealed record SecretMarkRecord
{
    public required Guid Id { get; init; }

    public required Guid RecipeId { get; init; }

    public required bool IsSecret { get; init; }

    public string Reason { get; init; } = "";

    public string Person { get; init; } = "";

    public required DateTimeOffset TimeUtc { get; init; }
}
