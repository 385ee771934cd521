using Coilwright.Papers.Spec;

namespace Coilwright.Papers.Repairs;

/// <summary>One quantity then and now.</summary>
/// <param name="AtDispatch">As it left the shop; null when not read.</param>
/// <param name="Now">As it came back; null when not read.</param>
public sealed record RepairReading(PieceReading? AtDispatch, PieceReading? Now);
