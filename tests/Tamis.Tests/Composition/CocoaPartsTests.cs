using CsCheck;
using Tamis.Composition;

namespace Tamis.Tests.Composition;

public class CocoaPartsTests
{
    private static readonly IReadOnlyList<ChocolateMinima> Minima = ChocolateMinima.ReadAll(KitFolder.Data("composition"));

    private static readonly Source Sheet = new("a supplier's sheet", Evidence.Supplier);

    private static ChocolateMinima Kind(string product) => Minima.First(kind => kind.Product == product);

    [Fact]
    public void Of_DarkChocolate_IsByDifference()
    {
        // 70 % cocoa with 42 % fat: all fat is cocoa butter, the rest of the cocoa is fat-free.
        var parts = CocoaParts.Of(Kind("dark chocolate"), 70, 42, null, Sheet);

        Assert.True(parts.AreFigures);
        Assert.Equal((42, 28), (parts.CocoaButterPercent.Low, parts.FatFreeCocoaPercent.Low));
        Assert.Equal(["fat-free cocoa = cocoa − cocoa butter", "cocoa", "cocoa butter = total fat − milk fat", "total fat", "milk fat"], parts.Working.Walk().Select(step => step.Step.Step));
    }

    [Fact]
    public void Of_MilkChocolateWithStatedMilkFat_IsAFigure()
    {
        var parts = CocoaParts.Of(Kind("milk chocolate"), 35, 36, 6, Sheet);

        Assert.Equal((30, 5), (parts.CocoaButterPercent.Low, parts.FatFreeCocoaPercent.High));
    }

    [Fact]
    public void Of_MilkChocolateWithoutIt_IsBoundedByTheLegalMinima()
    {
        // At least 3.5 % milk fat and 2.5 % fat-free cocoa (Directive 2000/36/EC Annex I, read in a summary).
        var parts = CocoaParts.Of(Kind("milk chocolate"), 35, 36, null, Sheet);

        Assert.False(parts.AreFigures);
        Assert.Equal((32.5, 2.5, 3.5), (parts.CocoaButterPercent.High, parts.FatFreeCocoaPercent.Low, parts.MilkFatPercent.Low));
    }

    [Fact]
    public void Of_MoreFatThanCocoa_IsRefused() =>
        Assert.Contains("is there another fat", Assert.Throws<ArgumentException>(() => CocoaParts.Of(Kind("dark chocolate"), 40, 45, null, Sheet)).Message, StringComparison.Ordinal);

    [Fact]
    public void Of_AnyChocolate_PartsMakeUpCocoaAndFat() =>
        Gen.Select(Gen.Double[35, 100], Gen.Double[0, 1], Gen.Bool).Sample((cocoa, share, isStated) =>
        {
            var fat = 4 + cocoa * share * 0.9;
            try
            {
                var parts = CocoaParts.Of(Kind("milk chocolate"), cocoa, fat, isStated ? 4 : null, Sheet);
                return Math.Abs(parts.CocoaButterPercent.Low + parts.FatFreeCocoaPercent.High - cocoa) < 1e-9
                    && Math.Abs(parts.CocoaButterPercent.High + parts.MilkFatPercent.Low - fat) < 1e-9
                    && parts.CocoaButterPercent.Low >= 0 && parts.FatFreeCocoaPercent.Low >= -1e-9;
            }
            catch (ArgumentException)
            {
                // Refused where no split fits: more fat than cocoa and milk fat can hold.
                return fat - (isStated ? 4 : 3.5) > cocoa || !isStated && fat < 3.5;
            }
        });
}
