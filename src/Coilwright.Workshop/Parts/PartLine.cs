namespace Coilwright.Workshop.Parts;

/// <summary>A part of a pickup.</summary>
/// <param name="Name">What it is: "bobbin, slug".</param>
/// <param name="What">Material and sizes.</param>
/// <param name="Each">How many in one piece.</param>
/// <param name="Options">Choices that bear on it: "bobbin colour: slate".</param>
public sealed record PartLine(string Name, string What, int Each, IReadOnlyList<string> Options);
