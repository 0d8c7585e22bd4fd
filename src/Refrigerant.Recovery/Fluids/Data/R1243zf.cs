using Refrigerant.Recovery.Fluids.Helmholtz;

namespace Refrigerant.Recovery.Fluids.Data;

/// <summary>R-1243zf, 3,3,3-trifluoropropene. The constants are those of the publication in <see cref="PureFluidData.Source"/>.</summary>
internal static class R1243zf
{
    public static PureFluidData Create() => new()
    {
        Designation = "R-1243zf",
        Name = "3,3,3-trifluoropropene",
        CasNumber = "677-21-4",
        Source = "Ryo Akasaka and Eric W. Lemmon, (2025), A Helmholtz Energy Equation of State for "
            + "3,3,3-Trifluoroprop-1-ene (R-1243zf), International Journal of Thermophysics, vol. 46, "
            + "doi:10.1007/s10765-024-03481-6",
        MolarMass = 0.09605113,
        GasConstant = 8.314462618,
        ReducingTemperature = 376.93,
        ReducingMolarDensity = 4300,
        CriticalTemperature = 376.93,
        CriticalPressure = 3513700,
        CriticalMolarDensity = 4300,
        AcentricFactor = 0.2595,
        MinimumTemperature = 122.35,
        MaximumTemperature = 430,
        MaximumPressure = 35000000,
        IdealGas = new IdealHelmholtz(
            logTau: 3,
            tauLogTau: 0,
            powers: new double[0, 2],
            planckEinstein: new double[,]
            {
                { 13.285, 2.328283766216539 },
                { 7.67, 9.451357015891544 },
            }),
        Residual = new ResidualTerms
        {
            Power = new double[,]
            {
                { 0.02626021, 4, 1, 0 },
                { 0.701348, 1, 0.12425, 0 },
                { -0.6180002748076, 1, 1.0096, 0 },
                { 0.1916400159007, 2, 0.271875, 0 },
                { 0.0762, 3, 0.405, 0 },
                { -0.795, 2, 1.07288, 0 },
            },
            Exponential = new double[,]
            {
                { -0.8537, 1, 1.45525, 1, 1 },
                { -0.3531, 1, 2.105, 1, 2 },
                { -0.07971, 1, 6.07, 1, 3 },
                { -0.05411, 2, 5.794375, 0.66, 3 },
                { -0.0424, 3, 4.094, 0.33, 3 },
            },
            Gaussian = new double[,]
            {
                { -0.06774, 1, 1.029, 0.78, 0, 1, 1.09375 },
                { -0.01032, 2, 1.65, 2.796, 0, 1, 1.0392 },
                { -0.1184, 1, 1.62, 1.643, 1.86, 0.80625, -0.3076 },
                { -0.1135, 1, 1.653125, 3.03, 2.03, 1.16, -0.426 },
            },
        },
    };
}
