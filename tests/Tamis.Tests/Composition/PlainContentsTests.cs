using CsCheck;
using Tamis.Composition;
using Tamis.Tables;

namespace Tamis.Tests.Composition;

public sealed class PlainContentsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Read_LongFile_IsAMatrixWithNaNWhereNobodyKnows()
    {
        var table = PlainContents.Read(_folder.Write("c.csv", "food,nutrient,value\nrye,fat,1.75\nrye,ash,2e-3\noat,fat,0.1\noat,ash,\n"));

        Assert.Equal(["rye", "oat"], table.Foods);
        Assert.Equal([1.75, 0.002], table.Matrix.Row(0).ToArray());
        Assert.Equal([0.1, double.NaN], table.Matrix.Row(1).ToArray());
    }

    // The short way to a number must be the exact one: the runtime's own parser is the measure.
    [Theory]
    [InlineData("0.1")]
    [InlineData("123456.789012")]
    [InlineData("9007199254740993")]
    [InlineData("0.000000000000001")]
    [InlineData("5.")]
    [InlineData("1.234567890123456789")]
    [InlineData("3.40282e+38")]
    public void Read_AnyNumber_IsTheNearestDouble(string text) => Assert.Equal(
        double.Parse(text, System.Globalization.CultureInfo.InvariantCulture), PlainContents.Read(_folder.Write("c.csv", $"food,nutrient,value\nrye,fat,{text}\n")).Matrix.Row(0)[0]);

    // Digits are looked at sixteen together wherever a number lies, and the last numbers of a file have no sixteen bytes: some rows, a number of every length and a point anywhere.
    [Fact]
    public void Read_DigitsAndAPoint_AreTheNumbersThatTheRuntimeReads() => (
        from digits in Gen.Char['0', '9'].Array[1, 19]
        from point in Gen.Int[-1, digits.Length]
        select point < 0 ? new string(digits) : new string(digits[..point]) + "." + new string(digits[point..])).Array[1, 20].Sample(numbers =>
    {
        var table = PlainContents.Read(_folder.Write("c.csv", "food,nutrient,value\n" + string.Join("\n", numbers.Select((number, row) => $"f{row},n,{number}"))));

        Assert.Equal(numbers.Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture)), numbers.Select((_, row) => table.Matrix.Row(row)[0]));
    }, iter: 2000, threads: 1);

    // A digit that is another sign is no digit, wherever it stands.
    [Fact]
    public void Read_ASignAmongDigits_IsNamed() => Gen.Select(Gen.Char['0', '9'].Array[1, 18], Gen.Int[0, 17], Gen.Char["/:xéß -+%"], Gen.Bool).Sample((digits, at, sign, isLast) =>
    {
        digits[at % digits.Length] = sign;
        var text = new string(digits);
        var isNumber = double.TryParse(text, System.Globalization.NumberStyles.AllowLeadingSign, System.Globalization.CultureInfo.InvariantCulture, out var number) && text.Length > 1;
        var file = _folder.Write("c.csv", $"food,nutrient,value\nrye,fat,{text}{(isLast ? "" : "\noat,fat,1234567890123456\n")}");

        if (isNumber) Assert.Equal(number, PlainContents.Read(file).Matrix.Row(0)[0]);
        else Assert.Equal(2, Assert.Throws<TableException>(() => PlainContents.Read(file)).Problems.Single().Row);
    }, iter: 2000, threads: 1);

    [Theory]
    [InlineData("food,nutrient,value\nrye,fat,1\nrye,ash,\"1,5\"\n", 3)]
    [InlineData("food,nutrient,value\nrye,fat,.\n", 2)]
    [InlineData("food,nutrient,value\nrye,fat\n", 2)]
    [InlineData("food,value\nrye,1\n", 0)]
    [InlineData("food,nutrient,value\nrye,fat,1e400\n", 2)]
    public void Read_WhatIsNoNumber_IsNamed(string text, int row) =>
        Assert.Equal(row, Assert.Throws<TableException>(() => PlainContents.Read(_folder.Write("c.csv", text))).Problems[0].Row);

    // Names are compared as numbers of eight bytes: at eight and at sixteen another way of reading them begins. Few letters, so that many share a start or an end.
    [Fact]
    public void Read_NamesOfEveryLength_AreToldApart() => Gen.Select(Gen.Char["ab"].Array[1, 20], Gen.Char["ab"].Array[1, 20]).Array[1, 300].Sample(pairs =>
    {
        (string Food, string Nutrient)[] names = [.. pairs.Select(pair => (new string(pair.Item1), new string(pair.Item2)))];
        Dictionary<(string, string), double> last = [];
        var text = new System.Text.StringBuilder("food,nutrient,value\n");
        for (var row = 0; row < names.Length; row++)
        {
            last[names[row]] = row;
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{names[row].Food},{names[row].Nutrient},{row}\n");
        }

        var table = PlainContents.Read(_folder.Write("names.csv", text.ToString()));

        Assert.Equal(names.Select(name => name.Food).Distinct(), table.Foods);
        Assert.Equal(names.Select(name => name.Nutrient).Distinct(), table.Nutrients);
        for (var food = 0; food < table.Foods.Count; food++)
            for (var nutrient = 0; nutrient < table.Nutrients.Count; nutrient++)
                Assert.Equal(last.GetValueOrDefault((table.Foods[food], table.Nutrients[nutrient]), double.NaN), table.Matrix.Row(food)[nutrient]);
    }, iter: 300, threads: 1);

    // Large enough to be cut in several chunks; rows of one food lie on both sides of a cut.
    [Fact]
    public void Read_OnAnyNumberOfCores_IsTheSameAndNamesTheSameRows()
    {
        var text = new System.Text.StringBuilder("food,nutrient,value\r\n");
        for (var i = 0; i < 120_000; i++) text.Append(System.Globalization.CultureInfo.InvariantCulture, $"food {i / 40},n{i * 7 % 40},{i % 997}.{i % 10}\r\n");
        var good = _folder.Write("big.csv", text.ToString());
        var (one, four) = (PlainContents.Read(good, threads: 1), PlainContents.Read(good, threads: 4));
        Assert.Equal(one.Foods, four.Foods);
        Assert.Equal(one.Nutrients, four.Nutrients);
        Assert.Equal(one.Matrix.Per100Grams.ToArray(), four.Matrix.Per100Grams.ToArray());

        var bad = _folder.Write("bad.csv", text.ToString().Replace("food 2900,n0,", "food 2900,n0,x", StringComparison.Ordinal).Replace("food 20,n0,", "food 20,n0,x", StringComparison.Ordinal));
        int[] RowsOf(int threads) => [.. Assert.Throws<TableException>(() => PlainContents.Read(bad, threads)).Problems.Select(problem => problem.Row)];
        Assert.Equal([802, 116_002], RowsOf(1));
        Assert.Equal(RowsOf(1), RowsOf(4));
    }

    // Each core reads from a line end to a line end: what may stand for one, or hold one, lies far behind the first rows here.
    [Theory]
    [InlineData("\"f\n1\",n1,1\n")]
    [InlineData("f1,n1,1\rf2,n1,2\rf3,n1,3\n")]
    [InlineData("\"f\r\n1\",n1,1\r\n")]
    [InlineData("f1,n1,1\r\nf2,n1,2\nf3,n1,3\r\n")]
    public void Read_UnusualLineEndsInALaterPart_IsTheSameOnAnyNumberOfCores(string rows)
    {
        var file = _folder.Write("odd.csv", LargeFile(90_000) + rows + LargeFile(9_000)[LargeFile(0).Length..]);
        var (one, four) = (PlainContents.Read(file, threads: 1), PlainContents.Read(file, threads: 4));

        Assert.Equal(one.Foods, four.Foods);
        Assert.Equal(one.Matrix.Per100Grams.ToArray(), four.Matrix.Per100Grams.ToArray());
        Assert.Equal(1, four.Matrix.Row(four.Foods.ToList().FindIndex(food => food.EndsWith('1') && food[0] == 'f' && food.Length < 5))[0]);
    }

    // The names of the columns are found by themselves, before the rest is read, where they stand in the first line for sure.
    [Theory]
    [InlineData("\r\n\nfood,nutrient,value\nrye,fat,1.75\n")]
    [InlineData("food,\"a\nnote\",nutrient,value\nrye,,fat,1.75\n")]
    [InlineData("food,nutrient,value\rrye,fat,1.75\r")]
    [InlineData("\uFEFFfood,nutrient,value\nrye,fat,1.75")]
    public void Read_ColumnsInUnusualLines_AreFound(string text) =>
        Assert.Equal(1.75, PlainContents.Read(_folder.Write("c.csv", text)).Matrix.Row(0)[0]);

    [Fact]
    public void Read_AFoodAgainInALaterPart_CountsTheLaterRow()
    {
        var file = _folder.Write("again.csv", LargeFile(90_000) + "food 0,n1,1234.5\nfood 1,n1,\n" + LargeFile(9_000)[LargeFile(0).Length..].Replace("food ", "other ", StringComparison.Ordinal));
        foreach (var threads in (int[])[1, 2, 3, 4])
        {
            var table = PlainContents.Read(file, threads);
            Assert.Equal(1234.5, table.Matrix.Row(0)[0]);
            Assert.Equal(double.NaN, table.Matrix.Row(1)[0]);
            Assert.Equal(2, table.Matrix.Row(2)[0]);
            Assert.Equal(99_000, table.Foods.Count);
        }
    }

    [Fact]
    public void Read_LargeFileWithoutAColumn_IsNamedOnce()
    {
        var file = _folder.Write("no.csv", LargeFile(90_000).Replace("value", "amount", StringComparison.Ordinal));

        Assert.Equal("value", Assert.Throws<TableException>(() => PlainContents.Read(file, threads: 4)).Problems.Single().Column);
    }

    [Fact]
    public void ReadLines_OnAnyNumberOfCores_IsTheSame()
    {
        var table = PlainContents.Read(_folder.Write("c.csv", "food,nutrient,value\nrye,fat,2\noat,fat,7\n"));
        // One formula is longer than a part, so that a cut on each side of it is none of a formula.
        string[] formulas = [.. Enumerable.Range(0, 9_000).SelectMany(formula => Enumerable.Repeat($"formula {formula}", formula == 4_000 ? 60_000 : 1 + formula % 5))];
        var file = _folder.Write("f.csv", "formula,food,mass_g\n" + string.Concat(formulas.Select((formula, line) => $"{formula},{(line % 3 == 0 ? "oat" : "rye")},{line}\n")));
        foreach (var threads in (int[])[1, 2, 3, 4, 7])
        {
            var lines = table.ReadLines(file, threads);
            Assert.Equal(9_000, lines.Count);
            Assert.Equal(Enumerable.Range(0, formulas.Length).Where(line => line == 0 || formulas[line] != formulas[line - 1]).Append(formulas.Length), lines.Starts);
            Assert.Equal(Enumerable.Range(0, formulas.Length).Select(line => line % 3 == 0 ? 1 : 0), lines.Rows);
            Assert.Equal(Enumerable.Range(0, formulas.Length).Select(line => (double)line), lines.MassGrams);
        }
    }

    private static string LargeFile(int rows) => "food,nutrient,value\n" + string.Concat(Enumerable.Range(0, rows).Select(row => $"food {row},n1,{row}\n"));

    [Fact]
    public void ReadLines_Formulas_StandOneAfterAnother()
    {
        var table = PlainContents.Read(_folder.Write("c.csv", "food,nutrient,value\nrye,fat,2\noat,fat,7\n"));
        var lines = table.ReadLines(_folder.Write("f.csv", "formula,food,mass_g\nA,oat,100\nA,rye,50\nB,rye,10\n"));

        Assert.Equal([0, 2, 3], lines.Starts);
        Assert.Equal([1, 0, 0], lines.Rows);
        Assert.Equal(2, lines.Count);
        Assert.Contains("barley", Assert.Throws<TableException>(() => table.ReadLines(_folder.Write("g.csv", "formula,food,mass_g\nA,barley,1\n"))).Message, StringComparison.Ordinal);
    }
}
