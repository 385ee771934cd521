using Coilwright.Storage;

namespace Coilwright.Application.Shops;

/// <summary>Why nothing could be stored, where that is neither the person's mistake nor the program's.</summary>
/// <param name="DiskIsFull">True for a disk without room; false for a file that may only be read.</param>
/// <param name="Words">For people.</param>
public sealed record ShopFault(bool DiskIsFull, string Words)
{
    /// <summary>The fault behind a failure; null when it is another one.</summary>
    public static ShopFault? Of(Exception failure) =>
        StorageFault.Of(failure) is { } fault ? new ShopFault(fault.DiskIsFull, fault.Words) : null;
}
