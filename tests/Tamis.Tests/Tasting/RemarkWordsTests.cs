using System.Text;
using Tamis.Tables;
using Tamis.Tasting;

namespace Tamis.Tests.Tasting;

public class RemarkWordsTests
{
    [Theory]
    [InlineData("Too SWEET, stopped halfway", "too sweet")]
    [InlineData("good bite, not rubbery", "clean bite; liked")]
    [InlineData("more toast, less nut", "toasted")]
    [InlineData("sharpen the knife", "")]
    [InlineData("", "")]
    public void CodesOf_Remark_FindsWholeWordsThatAreNotDenied(string remark, string codes) =>
        Assert.Equal(codes, string.Join("; ", RemarkWords.Kit.CodesOf(remark)));

    [Fact]
    public void Read_ListWithFaults_NamesAllOfThem()
    {
        List<CellProblem> problems = [];
        RemarkWords.Read(SheetFile.Parse("remark_words.csv", Encoding.UTF8.GetBytes("code,words\nsweet,\nsour,sour\nSour,acid\n")), problems);

        Assert.Equal(["words", "code"], problems.Select(problem => problem.Column));
    }

    [Fact]
    public void Count_SamePersonTwice_CountsOnce()
    {
        Source origin = new("test", Evidence.Estimate);
        Serving[] servings = [new("B1", "P1", "101", "T1", origin), new("B1", "P1", "102", "T1", origin), new("B1", "P2", "101", "T1", origin)];
        TastingLog log = new()
        {
            Sessions = [new("B1") { Kind = "bench" }], Servings = servings, Tasted = servings,
            Remarks = [new(servings[0], "greasy"), new(servings[1], "a bit greasy"), new(servings[2], "hm")],
        };

        Assert.Equal([new("B1", "T1", "greasy", 1, 2), new("B1", "T1", null, 1, 2)], RemarkWords.Kit.Count(log));
    }
}
