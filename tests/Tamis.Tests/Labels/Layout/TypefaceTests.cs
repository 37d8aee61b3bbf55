using CsCheck;
using Tamis.Labels;
using Tamis.Tables;

namespace Tamis.Tests.Labels.Layout;

public class TypefaceTests
{
    [Fact]
    public void Width_OfParts_IsTheWidthOfTheWhole() => Gen.Select(Gen.String, Gen.String, Gen.Double[0.1, 20]).Sample((one, other, size) =>
    {
        if (one.Length > 0 && char.IsHighSurrogate(one[^1])) return;
        var (whole, parts) = (Width(one + other), Width(one) + Width(other));
        Assert.Equal(whole, parts, 1e-12 * whole);

        double Width(string words) => Typeface.Kit.WidthMillimetres(words, size, false);
    });

    [Fact]
    public void Knows_WordsOfTheLaws_InEveryLanguage()
    {
        var words = from set in RuleSets.Load(LabelKit.Folder)
                    let terms = PanelTerms.Of(set)
                    from figure in set.Declaration
                    from language in terms.Languages
                    select terms.In(figure.Key, language) ?? figure.Term;
        Assert.All(words.Distinct(), word => Assert.True(Typeface.Kit.Knows(word), word));
    }

    [Fact]
    public void Load_BadCells_AreAllNamedAtOnce()
    {
        using TemporaryFolder folder = new();
        File.WriteAllText(Path.Combine(folder.Path, "widths.csv"), "code,regular,bold\nA,667,722\nU+0042,,722\nU+0043,722,722\nU+0043,722,722\n");
        File.WriteAllText(Path.Combine(folder.Path, "face.csv"), "key,value\nfamily,Arial\nx_height,none\n");

        var problems = Assert.Throws<TableException>(() => Typeface.Load(folder.Path)).Problems;

        Assert.Equal(["widths.csv 2", "widths.csv 3", "widths.csv 5"], problems.Where(problem => problem.Row > 0).Select(problem => $"{problem.File} {problem.Row}"));
        Assert.Equal(5, problems.Count(problem => problem.File == "face.csv"));
    }
}
