namespace Coilwright.Papers.Help;

/// <summary>A place in help where the words looked for stand.</summary>
/// <param name="Page">The page.</param>
/// <param name="Address">Where it is opened.</param>
/// <param name="Words">What stands there, shortened about the first of the words.</param>
public sealed record HelpHit(HelpPage Page, string Address, string Words);
