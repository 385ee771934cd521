namespace Coilwright.Web.Views.Listening;

/// <summary>A sound that a player may be turned to.</summary>
/// <param name="Letter">A, B, C, D or X: what its button and its key are called.</param>
/// <param name="Name">What it is, in words.</param>
/// <param name="Address">Where its file is.</param>
/// <param name="FileName">What the file is called when it is kept.</param>
public sealed record ListenVoice(string Letter, string Name, string Address, string FileName);
