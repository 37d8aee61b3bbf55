namespace Tamis.Composition;

/// <summary>What the cocoa of a chocolate is made of: cocoa butter and fat-free cocoa, from the cocoa percentage and the total fat on its sheet.</summary>
/// <param name="CocoaButterPercent">Cocoa butter, per cent of the chocolate.</param>
/// <param name="FatFreeCocoaPercent">Fat-free dry cocoa, per cent of the chocolate.</param>
/// <param name="MilkFatPercent">Milk fat, per cent of the chocolate.</param>
/// <param name="Working">How it was worked out.</param>
/// <remarks>Cocoa butter = fat − milk fat; fat-free cocoa = cocoa − cocoa butter: by difference, for a chocolate whose fat is cocoa butter and milk fat alone.
/// Where the sheet states no milk fat, the legal minima of its kind bound the parts; they are never taken for figures.</remarks>
public sealed record CocoaParts(Interval CocoaButterPercent, Interval FatFreeCocoaPercent, Interval MilkFatPercent, Working Working)
{
    /// <summary>Whether the sheet fixes the parts, so that they are figures and not bounds.</summary>
    public bool AreFigures => CocoaButterPercent.IsPoint && FatFreeCocoaPercent.IsPoint;

    /// <summary>The parts of a chocolate.</summary>
    /// <param name="kind">Its kind with the legal minima.</param>
    /// <param name="cocoaPercent">Its cocoa, fat-free cocoa and cocoa butter together, per cent, 0 to 100.</param>
    /// <param name="fatPercent">Its total fat, per cent, 0 to 100.</param>
    /// <param name="milkFatPercent">Its milk fat, per cent; null where the sheet does not say. A kind without milk has none.</param>
    /// <param name="sheet">Where cocoa and fat were read.</param>
    /// <exception cref="ArgumentException">The figures do not fit one chocolate of this kind; the message says which.</exception>
    public static CocoaParts Of(ChocolateMinima kind, double cocoaPercent, double fatPercent, double? milkFatPercent, Source sheet)
    {
        foreach (var percent in (double[])[cocoaPercent, fatPercent, milkFatPercent ?? 0])
            if (!(percent is >= 0 and <= 100)) throw new ArgumentException($"A share of a chocolate lies between 0 and 100 %, not at {percent} %.", nameof(cocoaPercent));
        var milkFat = milkFatPercent ?? (kind.HasMilk ? double.NaN : 0);
        // Milk fat that nobody states is at least the minimum, and leaves room for the cocoa butter that the kind must hold;
        // cocoa butter leaves room for the fat-free cocoa.
        var (leastButter, mostButter) = double.IsNaN(milkFat)
            ? (Math.Max(kind.CocoaButter, 0), Math.Min(fatPercent - kind.MilkFat, cocoaPercent - kind.FatFreeCocoa))
            : (fatPercent - milkFat, fatPercent - milkFat);
        if (mostButter < leastButter || mostButter < 0 || mostButter > cocoaPercent)
            throw new ArgumentException($"{cocoaPercent} % cocoa with {fatPercent} % fat is no {kind.Product} whose fat is cocoa butter{(kind.HasMilk ? " and milk fat" : "")} alone; is there another fat, or a figure of another product?", nameof(fatPercent));
        var butter = Interval.Between(leastButter, mostButter);
        var fatFree = Interval.Between(cocoaPercent - butter.High, cocoaPercent - butter.Low);
        var milk = Interval.Between(fatPercent - butter.High, fatPercent - butter.Low);
        Working cocoa = new("cocoa", cocoaPercent, "%", sheet), fat = new("total fat", fatPercent, "%", sheet);
        Working milkStep = new(milkFatPercent is not null || !kind.HasMilk ? "milk fat" : $"milk fat, bounded by the least for {kind.Product}", milk.Middle, "%", milkFatPercent is not null || !kind.HasMilk ? sheet : kind.Source);
        Working butterStep = new("cocoa butter = total fat − milk fat", butter.Middle, "%", new("by difference", Evidence.Computed)) { From = [fat, milkStep] };
        return new(butter, fatFree, milk, new("fat-free cocoa = cocoa − cocoa butter", fatFree.Middle, "%", new("by difference", Evidence.Computed)) { From = [cocoa, butterStep] });
    }
}
