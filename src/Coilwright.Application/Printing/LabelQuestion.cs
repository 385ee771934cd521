namespace Coilwright.Application.Printing;

/// <summary>Which labels a person wants, as typed.</summary>
/// <param name="Kind">coil, piece, spool or box.</param>
/// <param name="Name">The batch, the serial, the spool, or a serial in the box.</param>
/// <param name="Size">For example 62x29.</param>
/// <param name="First">Number of the first coil.</param>
/// <param name="Count">How many coils; empty for all of the batch.</param>
public sealed record LabelQuestion(string Kind, string Name, string Size, string First = "", string Count = "");
