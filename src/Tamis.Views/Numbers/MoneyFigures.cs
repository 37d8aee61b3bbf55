namespace Tamis.Views;

/// <summary>Money as a page shows it.</summary>
public static class MoneyFigures
{
    extension(Figures figures)
    {
        /// <summary>A sum of money with two decimals.</summary>
        public Num Money(double? sum, string currency) => figures.Number(sum, 2, currency);

        /// <summary>A sum of money as far as it is known: <c>at least</c> where a price is missing.</summary>
        public Num Money(Amount sum, string currency) => figures.Sum(sum, 2, currency);

        /// <summary>What a gram costs: three significant digits, for it is far below a cent as a rule.</summary>
        public Num SmallMoney(double? sum, string currency) => figures.Significant(sum, currency);
    }
}
