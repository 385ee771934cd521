Console.WriteLine("coilwright");
