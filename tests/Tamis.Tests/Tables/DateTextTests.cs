using CsCheck;
using Tamis.Tables;

namespace Tamis.Tests.Tables;

public class DateTextTests
{
    [Theory]
    [InlineData("2026-11-25", DateOrder.DayMonthYear)]
    [InlineData("2026/11/25", DateOrder.MonthDayYear)]
    [InlineData("25/11/2026", DateOrder.DayMonthYear)]
    [InlineData("25.11.26", DateOrder.DayMonthYear)]
    [InlineData("25. 11. 2026", DateOrder.DayMonthYear)]
    [InlineData("11/25/2026", DateOrder.MonthDayYear)]
    [InlineData("25-Nov-2026", DateOrder.YearMonthDay)]
    [InlineData("25 November 2026", DateOrder.YearMonthDay)]
    public void TryParse_AsWritten_Read(string text, DateOrder order)
    {
        Assert.True(DateText.TryParse(text, order, out var date));
        Assert.Equal(new DateOnly(2026, 11, 25), date);
    }

    [Theory]
    [InlineData("31/02/2026", DateOrder.DayMonthYear)]
    [InlineData("25/11/2026", DateOrder.MonthDayYear)]
    [InlineData("25/11/2026", DateOrder.YearMonthDay)]
    [InlineData("46276", DateOrder.YearMonthDay)]
    [InlineData("yesterday", DateOrder.YearMonthDay)]
    [InlineData("", DateOrder.YearMonthDay)]
    public void TryParse_NoDateInThisOrder_Refused(string text, DateOrder order) => Assert.False(DateText.TryParse(text, order, out _));

    [Fact]
    public void Write_AnyDate_ReadsBackTheSame() => Gen.Int[0, 36000].Select(Gen.Enum<DateOrder>()).Sample((days, order) =>
    {
        var date = new DateOnly(2000, 1, 1).AddDays(days);
        return DateText.TryParse(DateText.Write(date, order), order, out var read) && read == date;
    });

    [Theory]
    [InlineData("12-Aug", true)]
    [InlineData("08.Dec", true)]
    [InlineData("8. Dez", true)]
    [InlineData("1/2", false)]
    [InlineData("8-12", false)]
    [InlineData("1 apricot", false)]
    [InlineData("3 mars", false)]
    [InlineData("2 decilitres", false)]
    public void LooksLikeDate_WhatASpreadsheetMakesOfARange_Seen(string text, bool isDate) => Assert.Equal(isDate, DateText.LooksLikeDate(text));
}
