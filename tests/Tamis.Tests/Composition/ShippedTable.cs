using Tamis.Composition;

namespace Tamis.Tests.Composition;

/// <summary>The table that the kit ships, read once for all tests.</summary>
internal static class ShippedTable
{
    public static string Folder { get; } = KitFolder.Data("composition");

    public static CompositionTable Table { get; } = CompositionTable.Load(Folder);
}
