PRAGMA foreign_keys=OFF;
BEGIN TRANSACTION;
CREATE TABLE answers (
    lot         INTEGER PRIMARY KEY REFERENCES lots (id),
    revision    INTEGER NOT NULL,
    decision    TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('bid', 'do_not_bid')),
    walk_away   INTEGER,
    binding     TEXT    NOT NULL,
    loss_chance REAL    NOT NULL,
    mean_profit REAL    NOT NULL,
    per_hour    REAL,
    noted_at    TEXT    NOT NULL
) STRICT;
INSERT INTO answers VALUES(1,1,'bid',630000,'max_loss_chance',0.14000000000000001332,2100.2499999999999999,41.5,'2026-11-20T07:30:00Z');
CREATE TABLE comparables (
    lot          INTEGER NOT NULL REFERENCES lots (id),
    position     INTEGER NOT NULL,
    comparable   TEXT    NOT NULL,
    price        INTEGER NOT NULL,
    kind         TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('', 'asked', 'sold')),
    date         TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    model_year   INTEGER NOT NULL,
    make         TEXT    NOT NULL,
    model        TEXT    NOT NULL,
    trim         TEXT    NOT NULL,
    mileage      REAL,
    mileage_unit TEXT    NOT NULL CONSTRAINT mileage_unit CHECK (mileage_unit IN ('', 'mi', 'km')),
    title        TEXT    NOT NULL,
    distance_mi  REAL,
    condition    REAL,
    note         TEXT    NOT NULL,
    source       TEXT    NOT NULL,
    more         TEXT    NOT NULL CONSTRAINT more CHECK (json_valid(more)),
    excluded     INTEGER NOT NULL CONSTRAINT excluded CHECK (excluded IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO comparables VALUES(1,0,'c2',1725050,'asked','2026-11-01',2020,'Orlan','Tessel','',70000.0,'km','rebuilt',NULL,NULL,'','','null',1);
INSERT INTO comparables VALUES(2,0,'c1',1650000,'sold','2026-10-02',2019,'Orlan','Tessel','LX',58000.0,'mi','clear',12.5,4.0,'one owner','yard list','{"fuel":"petrol"}',0);
INSERT INTO comparables VALUES(2,1,'c2',1725050,'asked','2026-11-01',2020,'Orlan','Tessel','',70000.0,'km','rebuilt',NULL,NULL,'','','null',1);
CREATE TABLE findings (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    finding  TEXT    NOT NULL,
    answer   TEXT    NOT NULL CONSTRAINT answer CHECK (answer IN ('yes', 'no')),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO findings VALUES(1,0,'rust_below','no');
INSERT INTO findings VALUES(1,1,'wheel_out_of_place','yes');
INSERT INTO findings VALUES(2,0,'rust_below','no');
INSERT INTO findings VALUES(2,1,'wheel_out_of_place','yes');
CREATE TABLE lots (
    id              INTEGER PRIMARY KEY AUTOINCREMENT,
    state           TEXT    NOT NULL CONSTRAINT state CHECK (state IN ('to look at', 'looked at', 'bid', 'won', 'lost', 'passed')),
    archived        INTEGER NOT NULL DEFAULT 0 CONSTRAINT archived CHECK (archived IN (0, 1)),
    removed_at      TEXT,
    saved_at        TEXT    NOT NULL,
    revision        INTEGER NOT NULL DEFAULT 0,
    format          TEXT    NOT NULL,
    currency        TEXT    NOT NULL,
    valued_on       TEXT    NOT NULL CONSTRAINT valued_on CHECK (valued_on = '' OR valued_on GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    number          TEXT    NOT NULL,
    sale            TEXT    NOT NULL,
    sale_date       TEXT    NOT NULL CONSTRAINT sale_date CHECK (sale_date = '' OR sale_date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    vin             TEXT    NOT NULL,
    model_year      INTEGER NOT NULL,
    make            TEXT    NOT NULL,
    model           TEXT    NOT NULL,
    trim            TEXT    NOT NULL,
    odometer        INTEGER,
    odometer_unit   TEXT    NOT NULL CONSTRAINT odometer_unit CHECK (odometer_unit IN ('', 'mi', 'km')),
    odometer_status TEXT    NOT NULL CONSTRAINT odometer_status CHECK (odometer_status IN ('', 'actual', 'not_actual', 'exceeds_limits', 'exempt', 'unknown')),
    title_issued_in TEXT    NOT NULL,
    title_document  TEXT    NOT NULL,
    title_brands    TEXT    NOT NULL CONSTRAINT title_brands CHECK (json_valid(title_brands)),
    register_in     TEXT    NOT NULL,
    loss            TEXT    NOT NULL CONSTRAINT loss CHECK (json_valid(loss)),
    condition       TEXT    NOT NULL CONSTRAINT condition CHECK (condition IN ('', 'drives', 'starts', 'turns_over', 'dead', 'unknown')),
    keys            INTEGER CONSTRAINT keys CHECK (keys IN (0, 1)),
    airbags         TEXT    NOT NULL CONSTRAINT airbags CHECK (json_valid(airbags))
) STRICT;
INSERT INTO lots VALUES(1,'bid',0,NULL,'2026-11-20T07:30:00Z',1,'walkline-case/1','USD','2026-11-20','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','GT',61200,'mi','actual','US-XX','salvage','null','US-XX','["collision"]','starts',1,'["front"]');
INSERT INTO lots VALUES(2,'won',0,NULL,'2026-11-25T13:48:04.375863379Z',0,'walkline-case/1','USD','2026-11-20','14','Harrow Flats yard','2026-11-28','',2019,'Orlan','Tessel','LX',61200,'mi','actual','US-XX','salvage','null','US-XX','["collision"]','starts',1,'["front"]');
CREATE TABLE predictions (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    lot        INTEGER NOT NULL REFERENCES lots (id),
    frozen_at  TEXT    NOT NULL,
    case_file  TEXT    NOT NULL CONSTRAINT case_file CHECK (json_valid(case_file)),
    answer     TEXT    NOT NULL CONSTRAINT answer CHECK (json_valid(answer)),
    factors    TEXT    NOT NULL CONSTRAINT factors CHECK (json_valid(factors)),
    seed       INTEGER NOT NULL,
    engine     TEXT    NOT NULL
) STRICT;
INSERT INTO predictions VALUES(1,1,'2026-11-20T07:30:00Z',replace('{\n  "format": "walkline-case/1",\n  "currency": "USD",\n  "valued_on": "2026-11-20",\n  "lot": {\n    "number": "14",\n    "sale": "Harrow Flats yard",\n    "sale_date": "2026-11-28",\n    "model_year": 2019,\n    "make": "Orlan",\n    "model": "Tessel",\n    "trim": "LX",\n    "odometer": 61200,\n    "odometer_unit": "mi",\n    "odometer_status": "actual",\n    "title": {\n      "issued_in": "US-XX",\n      "document": "salvage",\n      "register_in": "US-XX"\n    },\n    "loss": [\n      "collision"\n    ],\n    "condition": "starts",\n    "keys": true,\n    "airbags_deployed": [\n      "front"\n    ]\n  },\n  "damage": [\n    {\n      "area": "12",\n      "extent": "functional",\n      "depth": "bolted",\n      "note": "bumper, \"hood\""\n    },\n    {\n      "area": "undercarriage",\n      "extent": "minor",\n      "depth": "structure"\n    }\n  ],\n  "findings": {\n    "rust_below": "no",\n    "wheel_out_of_place": "yes"\n  },\n  "repair": {\n    "use_catalogue": false,\n    "lines": [\n      {\n        "id": "r1",\n        "job": "Replace bumper cover",\n        "area": "12",\n        "operation": "replace",\n        "chance": 0.9,\n        "hours": {\n          "body": {\n            "low": 1,\n            "likely": 1.5,\n            "high": 3\n          }\n        },\n        "materials": {\n          "low": 20.00,\n          "likely": 30.00,\n          "high": 60.00\n        },\n        "outside": 0.00,\n        "parts": [\n          {\n            "name": "bumper cover",\n            "critical": true,\n            "options": [\n              {\n                "source": "used",\n                "price": {\n                  "low": 120.00,\n                  "likely": 180.00,\n                  "high": 260.00\n                },\n                "freight": 40.00,\n                "lead_days": {\n                  "low": 1,\n                  "likely": 3,\n                  "high": 10\n                },\n                "chance": 0.7,\n                "extra_hours": 0,\n                "core_back": 0.00\n              }\n            ],\n            "fallback": {\n              "price": 600.00,\n              "lead_days": 21,\n              "hours": 0\n            }\n          }\n        ],\n        "edited": false,\n        "removed": false\n      }\n    ]\n  },\n  "hidden": {\n    "use_catalogue": false,\n    "risks": [\n      {\n        "id": "h1",\n        "name": "Control arm mount torn",\n        "chance": {\n          "a": 2,\n          "b": 6\n        },\n        "cost": {\n          "low": 150.00,\n          "likely": 300.00,\n          "high": 900.00\n        },\n        "hours": {\n          "structure": {\n            "low": 1,\n            "likely": 3,\n            "high": 8\n          }\n        },\n        "days": 2,\n        "loading": 0.25,\n        "removed": false\n      }\n    ],\n    "shared_loading": 0\n  },\n  "resale": {\n    "rows": [\n      {\n        "id": "c1",\n        "price": "16500.00",\n        "kind": "sold",\n        "date": "2026-10-02",\n        "model_year": 2019,\n        "make": "Orlan",\n        "model": "Tessel",\n        "trim": "LX",\n        "mileage": 58000,\n        "mileage_unit": "mi",\n        "title": "clear",\n        "distance": 12.5,\n        "condition": 4,\n        "note": "one owner",\n        "source": "yard list",\n        "more": {\n          "fuel": "petrol"\n        },\n        "excluded": false\n      },\n      {\n        "id": "c2",\n        "price": "17250.50",\n        "kind": "asked",\n        "date": "2026-11-01",\n        "model_year": 2020,\n        "make": "Orlan",\n        "model": "Tessel",\n        "mileage": 70000,\n        "mileage_unit": "km",\n        "title": "rebuilt",\n        "excluded": true\n      }\n    ],\n    "subject": {\n      "trim": "LX",\n      "condition": 3,\n      "brand": "rebuilt"\n    },\n    "brand_discount": {\n      "low": 0.15,\n      "likely": 0.28,\n      "high": 0.45\n    },\n    "asked_to_sold": {\n      "low": 0.9,\n      "likely": 0.95,\n      "high": 1\n    },\n    "guess": {\n      "low": 14000.00,\n      "likely": 16500.00,\n      "high": 18500.00\n    }\n  },\n  "buying": {\n    "bid_steps": [\n      {\n        "from": "0.00",\n        "step": "25.00"\n      },\n      {\n        "from": "1000.00",\n        "step": "50.00"\n      }\n    ],\n    "fees": [\n      {\n        "name": "Buyer''s fee",\n        "mode": "whole",\n        "rows": [\n          {\n            "from": "0.00",\n            "flat": "100.00",\n            "percent": 0\n          },\n          {\n            "from": "1000.00",\n            "flat": "150.00",\n            "percent": 0.02\n          },\n          {\n            "from": "5000.00",\n            "flat": "0.00",\n            "percent": 0.08,\n            "minimum": "400.00"\n          }\n        ]\n      }\n    ],\n    "fixed": [\n      {\n        "name": "Gate",\n        "amount": "75.00"\n      }\n    ],\n    "payment_surcharge": 0.025,\n    "tax": {\n      "rate": 0.0625,\n      "base": "hammer_and_fees"\n    },\n    "freight": {\n      "low": 150.00,\n      "likely": 180.00,\n      "high": 240.00\n    },\n    "storage": {\n      "per_day": 30.00,\n      "free_days": 3,\n      "days": {\n        "low": 2,\n        "likely": 3,\n        "high": 6\n      }\n    }\n  },\n  "time": {\n    "hours_per_week": 30,\n    "inspection_queue_days": {\n      "low": 7,\n      "likely": 14,\n      "high": 35\n    },\n    "days_to_sell": {\n      "low": 7,\n      "likely": 21,\n      "high": 60\n    },\n    "holding_per_day": 6.00,\n    "capital_rate": 0.1\n  },\n  "selling": {\n    "percent": 0,\n    "flat": 250.00\n  },\n  "labour": {\n    "rates": {\n      "body": 35.00,\n      "electrical": 35.00,\n      "mechanical": 35.00,\n      "paint": 35.00,\n      "structure": 35.00,\n      "trim": 35.00\n    }\n  },\n  "market": {\n    "rivals": 4,\n    "hammer_guess": {\n      "low": 3500.00,\n      "likely": 5200.00,\n      "high": 7500.00\n    }\n  },\n  "rules": {\n    "min_profit": "1500.00",\n    "min_margin": 0.12,\n    "max_loss_chance": 0.15,\n    "max_worst_tenth_loss": "2500.00",\n    "min_per_hour": "40.00",\n    "max_cash": "20000.00",\n    "max_days": 150\n  },\n  "run": {\n    "scenarios": 4096,\n    "seed": 7,\n    "winners_allowance": false\n  }\n}\n','\n',char(10)),replace('{\n  "format": "walkline-answer/1",\n  "currency": "USD",\n  "decision": "bid",\n  "walk_away": "6300.00",\n  "binding_rule": "max_loss_chance",\n  "reasons": [],\n  "warnings": [],\n  "ceilings": {},\n  "resale": {\n    "mean": 0,\n    "p10": 0,\n    "p50": 0,\n    "p90": 0,\n    "rows_used": 0,\n    "adjusted": []\n  },\n  "repair": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0,\n    "lines": []\n  },\n  "hidden": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0,\n    "risks": []\n  },\n  "days": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  },\n  "hours": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  },\n  "acquisition": {\n    "bid": "0.00",\n    "lines": [],\n    "total": "0.00"\n  },\n  "profit": {\n    "mean": 2100.25,\n    "p05": 0,\n    "p10": 0,\n    "p50": 0,\n    "p90": 0,\n    "loss_chance": 0.14,\n    "worst_tenth_mean": 0,\n    "margin": 0,\n    "per_hour": 41.5\n  },\n  "ladder": [],\n  "waterfall": [],\n  "drivers": [],\n  "checklist": [],\n  "own_labour": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  }\n}\n','\n',char(10)),'{}',7,'1');
INSERT INTO predictions VALUES(2,2,'2026-11-25T13:48:04.379734524Z',replace('{\n  "format": "walkline-case/1",\n  "currency": "USD",\n  "valued_on": "2026-11-20",\n  "lot": {\n    "number": "14",\n    "sale": "Harrow Flats yard",\n    "sale_date": "2026-11-28",\n    "model_year": 2019,\n    "make": "Orlan",\n    "model": "Tessel",\n    "trim": "LX",\n    "odometer": 61200,\n    "odometer_unit": "mi",\n    "odometer_status": "actual",\n    "title": {\n      "issued_in": "US-XX",\n      "document": "salvage",\n      "register_in": "US-XX"\n    },\n    "loss": [\n      "collision"\n    ],\n    "condition": "starts",\n    "keys": true,\n    "airbags_deployed": [\n      "front"\n    ]\n  },\n  "damage": [\n    {\n      "area": "12",\n      "extent": "functional",\n      "depth": "bolted",\n      "note": "bumper, \"hood\""\n    },\n    {\n      "area": "undercarriage",\n      "extent": "minor",\n      "depth": "structure"\n    }\n  ],\n  "findings": {\n    "rust_below": "no",\n    "wheel_out_of_place": "yes"\n  },\n  "repair": {\n    "use_catalogue": false,\n    "lines": [\n      {\n        "id": "r1",\n        "job": "Replace bumper cover",\n        "area": "12",\n        "operation": "replace",\n        "chance": 0.9,\n        "hours": {\n          "body": {\n            "low": 1,\n            "likely": 1.5,\n            "high": 3\n          }\n        },\n        "materials": {\n          "low": 20.00,\n          "likely": 30.00,\n          "high": 60.00\n        },\n        "outside": 0.00,\n        "parts": [\n          {\n            "name": "bumper cover",\n            "critical": true,\n            "options": [\n              {\n                "source": "used",\n                "price": {\n                  "low": 120.00,\n                  "likely": 180.00,\n                  "high": 260.00\n                },\n                "freight": 40.00,\n                "lead_days": {\n                  "low": 1,\n                  "likely": 3,\n                  "high": 10\n                },\n                "chance": 0.7,\n                "extra_hours": 0,\n                "core_back": 0.00\n              }\n            ],\n            "fallback": {\n              "price": 600.00,\n              "lead_days": 21,\n              "hours": 0\n            }\n          }\n        ],\n        "edited": false,\n        "removed": false\n      }\n    ]\n  },\n  "hidden": {\n    "use_catalogue": false,\n    "risks": [\n      {\n        "id": "h1",\n        "name": "Control arm mount torn",\n        "chance": {\n          "a": 2,\n          "b": 6\n        },\n        "cost": {\n          "low": 150.00,\n          "likely": 300.00,\n          "high": 900.00\n        },\n        "hours": {\n          "structure": {\n            "low": 1,\n            "likely": 3,\n            "high": 8\n          }\n        },\n        "days": 2,\n        "loading": 0.25,\n        "removed": false\n      }\n    ],\n    "shared_loading": 0\n  },\n  "resale": {\n    "rows": [\n      {\n        "id": "c1",\n        "price": "16500.00",\n        "kind": "sold",\n        "date": "2026-10-02",\n        "model_year": 2019,\n        "make": "Orlan",\n        "model": "Tessel",\n        "trim": "LX",\n        "mileage": 58000,\n        "mileage_unit": "mi",\n        "title": "clear",\n        "distance": 12.5,\n        "condition": 4,\n        "note": "one owner",\n        "source": "yard list",\n        "more": {\n          "fuel": "petrol"\n        },\n        "excluded": false\n      },\n      {\n        "id": "c2",\n        "price": "17250.50",\n        "kind": "asked",\n        "date": "2026-11-01",\n        "model_year": 2020,\n        "make": "Orlan",\n        "model": "Tessel",\n        "mileage": 70000,\n        "mileage_unit": "km",\n        "title": "rebuilt",\n        "excluded": true\n      }\n    ],\n    "subject": {\n      "trim": "LX",\n      "condition": 3,\n      "brand": "rebuilt"\n    },\n    "brand_discount": {\n      "low": 0.15,\n      "likely": 0.28,\n      "high": 0.45\n    },\n    "asked_to_sold": {\n      "low": 0.9,\n      "likely": 0.95,\n      "high": 1\n    },\n    "guess": {\n      "low": 14000.00,\n      "likely": 16500.00,\n      "high": 18500.00\n    }\n  },\n  "buying": {\n    "bid_steps": [\n      {\n        "from": "0.00",\n        "step": "25.00"\n      },\n      {\n        "from": "1000.00",\n        "step": "50.00"\n      }\n    ],\n    "fees": [\n      {\n        "name": "Buyer''s fee",\n        "mode": "whole",\n        "rows": [\n          {\n            "from": "0.00",\n            "flat": "100.00",\n            "percent": 0\n          },\n          {\n            "from": "1000.00",\n            "flat": "150.00",\n            "percent": 0.02\n          },\n          {\n            "from": "5000.00",\n            "flat": "0.00",\n            "percent": 0.08,\n            "minimum": "400.00"\n          }\n        ]\n      }\n    ],\n    "fixed": [\n      {\n        "name": "Gate",\n        "amount": "75.00"\n      }\n    ],\n    "payment_surcharge": 0.025,\n    "tax": {\n      "rate": 0.0625,\n      "base": "hammer_and_fees"\n    },\n    "freight": {\n      "low": 150.00,\n      "likely": 180.00,\n      "high": 240.00\n    },\n    "storage": {\n      "per_day": 30.00,\n      "free_days": 3,\n      "days": {\n        "low": 2,\n        "likely": 3,\n        "high": 6\n      }\n    }\n  },\n  "time": {\n    "hours_per_week": 30,\n    "inspection_queue_days": {\n      "low": 7,\n      "likely": 14,\n      "high": 35\n    },\n    "days_to_sell": {\n      "low": 7,\n      "likely": 21,\n      "high": 60\n    },\n    "holding_per_day": 6.00,\n    "capital_rate": 0.1\n  },\n  "selling": {\n    "percent": 0,\n    "flat": 250.00\n  },\n  "labour": {\n    "rates": {\n      "body": 35.00,\n      "electrical": 35.00,\n      "mechanical": 35.00,\n      "paint": 35.00,\n      "structure": 35.00,\n      "trim": 35.00\n    }\n  },\n  "market": {\n    "rivals": 4,\n    "hammer_guess": {\n      "low": 3500.00,\n      "likely": 5200.00,\n      "high": 7500.00\n    }\n  },\n  "rules": {\n    "min_profit": "1500.00",\n    "min_margin": 0.12,\n    "max_loss_chance": 0.15,\n    "max_worst_tenth_loss": "2500.00",\n    "min_per_hour": "40.00",\n    "max_cash": "20000.00",\n    "max_days": 150\n  },\n  "run": {\n    "scenarios": 4096,\n    "seed": 7,\n    "winners_allowance": false\n  }\n}\n','\n',char(10)),replace('{\n  "format": "walkline-answer/1",\n  "currency": "USD",\n  "decision": "bid",\n  "walk_away": "4200.00",\n  "binding_rule": "max_loss_chance",\n  "reasons": [],\n  "warnings": [],\n  "ceilings": {},\n  "resale": {\n    "mean": 0,\n    "p10": 0,\n    "p50": 0,\n    "p90": 0,\n    "rows_used": 0,\n    "adjusted": [],\n    "warnings": []\n  },\n  "repair": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0,\n    "lines": []\n  },\n  "hidden": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0,\n    "risks": []\n  },\n  "days": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  },\n  "hours": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  },\n  "acquisition": {\n    "bid": "0.00",\n    "lines": [],\n    "total": "0.00"\n  },\n  "profit": {\n    "mean": 2100.25,\n    "p05": 0,\n    "p10": 0,\n    "p50": 0,\n    "p90": 0,\n    "loss_chance": 0.14,\n    "worst_tenth_mean": 0,\n    "margin": 0,\n    "per_hour": 41.5\n  },\n  "ladder": [],\n  "waterfall": [],\n  "drivers": [],\n  "checklist": [],\n  "own_labour": {\n    "mean": 0,\n    "p10": 0,\n    "p90": 0\n  }\n}\n','\n',char(10)),'null',9,'e');
CREATE TABLE repair_lines (
    lot              INTEGER NOT NULL REFERENCES lots (id),
    position         INTEGER NOT NULL,
    line             TEXT    NOT NULL,
    job              TEXT    NOT NULL,
    area             TEXT    NOT NULL,
    operation        TEXT    NOT NULL,
    chance           REAL,
    hours            TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    materials_low    REAL    NOT NULL,
    materials_likely REAL    NOT NULL,
    materials_high   REAL    NOT NULL,
    outside_low      REAL    NOT NULL,
    outside_likely   REAL    NOT NULL,
    outside_high     REAL    NOT NULL,
    parts            TEXT    NOT NULL CONSTRAINT parts CHECK (json_valid(parts)),
    loading          REAL,
    why              TEXT    NOT NULL,
    caution          TEXT    NOT NULL,
    edited           INTEGER NOT NULL CONSTRAINT edited CHECK (edited IN (0, 1)),
    removed          INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO repair_lines VALUES(1,0,'r1','Replace bumper cover','12','replace',0.9000000000000000222,'{"body":{"low":1,"likely":1.5,"high":3}}',20.0,30.0,60.0,0.0,0.0,0.0,'[{"name":"bumper cover","critical":true,"options":[{"source":"used","price":{"low":120,"likely":180,"high":260},"freight":{"low":40,"likely":40,"high":40},"lead_days":{"low":1,"likely":3,"high":10},"chance":0.7,"extra_hours":{"low":0,"likely":0,"high":0},"core_back":{"low":0,"likely":0,"high":0},"quoted":""}],"fallback":{"price":{"low":600,"likely":600,"high":600},"lead_days":{"low":21,"likely":21,"high":21},"hours":{"low":0,"likely":0,"high":0}}}]',NULL,'','',0,0);
INSERT INTO repair_lines VALUES(2,0,'r1','Replace bumper cover','12','replace',0.9000000000000000222,'{"body":{"low":1,"likely":1.5,"high":3}}',20.0,30.0,60.0,0.0,0.0,0.0,'[{"name":"bumper cover","critical":true,"options":[{"source":"used","price":{"low":120,"likely":180,"high":260},"freight":{"low":40,"likely":40,"high":40},"lead_days":{"low":1,"likely":3,"high":10},"chance":0.7,"extra_hours":{"low":0,"likely":0,"high":0},"core_back":{"low":0,"likely":0,"high":0},"quoted":""}],"fallback":{"price":{"low":600,"likely":600,"high":600},"lead_days":{"low":21,"likely":21,"high":21},"hours":{"low":0,"likely":0,"high":0}}}]',NULL,'','',0,0);
CREATE TABLE risks (
    lot         INTEGER NOT NULL REFERENCES lots (id),
    position    INTEGER NOT NULL,
    risk        TEXT    NOT NULL,
    name        TEXT    NOT NULL,
    present     REAL    NOT NULL,
    absent      REAL    NOT NULL,
    cost_low    REAL    NOT NULL,
    cost_likely REAL    NOT NULL,
    cost_high   REAL    NOT NULL,
    hours       TEXT    NOT NULL CONSTRAINT hours CHECK (json_valid(hours)),
    days_low    REAL    NOT NULL,
    days_likely REAL    NOT NULL,
    days_high   REAL    NOT NULL,
    loading     REAL,
    evidence    TEXT    NOT NULL CONSTRAINT evidence CHECK (json_valid(evidence)),
    why         TEXT    NOT NULL,
    caution     TEXT    NOT NULL,
    removed     INTEGER NOT NULL CONSTRAINT removed CHECK (removed IN (0, 1)), brings TEXT NOT NULL DEFAULT 'null' CONSTRAINT brings CHECK (json_valid(brings)),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO risks VALUES(1,0,'h1','Control arm mount torn',2.0,6.0,150.0,300.0,900.0,'{"structure":{"low":1,"likely":3,"high":8}}',2.0,2.0,2.0,0.25,'null','','',0,'null');
INSERT INTO risks VALUES(2,0,'h1','Control arm mount torn',2.0,6.0,150.0,300.0,900.0,'{"structure":{"low":1,"likely":3,"high":8}}',2.0,2.0,2.0,0.25,'null','','',0,'null');
CREATE TABLE settings (
    name     TEXT PRIMARY KEY,
    value    TEXT NOT NULL CONSTRAINT value CHECK (json_valid(value)),
    saved_at TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO settings VALUES('theme','"light"','2026-11-20T07:30:00Z');
CREATE TABLE shop_steps (
    number  INTEGER PRIMARY KEY AUTOINCREMENT,
    place   TEXT    NOT NULL CONSTRAINT place CHECK (place IN ('board', 'bench')),
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL
) STRICT;
INSERT INTO shop_steps VALUES(1,'board','mark lot 14 as looked at','{"lots":[{"lot":1,"before":{"state":"bid","archived":false,"removed":""},"after":{"state":"looked at","archived":false,"removed":""}}],"settings":null,"edits":null}',0,'2026-11-25T13:43:25.598004803Z');
INSERT INTO shop_steps VALUES(2,'board','mark lot 14 as bid','{"lots":[{"lot":1,"before":{"state":"looked at","archived":false,"removed":""},"after":{"state":"bid","archived":false,"removed":""}}],"settings":null,"edits":null}',0,'2026-11-25T13:43:25.598609534Z');
CREATE TABLE steps (
    lot     INTEGER NOT NULL REFERENCES lots (id),
    number  INTEGER NOT NULL,
    label   TEXT    NOT NULL,
    change  TEXT    NOT NULL CONSTRAINT change CHECK (json_valid(change)),
    undone  INTEGER NOT NULL DEFAULT 0 CONSTRAINT undone CHECK (undone IN (0, 1)),
    made_at TEXT    NOT NULL,
    PRIMARY KEY (lot, number)
) STRICT;
INSERT INTO steps VALUES(1,1,'Trim','{"documents":{"lot":{"before":{"number":"14","sale":"Harrow Flats yard","sale_date":"2026-11-28","vin":"","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","odometer":61200,"odometer_unit":"mi","odometer_status":"actual","title":{"issued_in":"US-XX","document":"salvage","brands":null,"register_in":"US-XX"},"loss":["collision"],"condition":"starts","keys":true,"airbags_deployed":["front"]},"after":{"number":"14","sale":"Harrow Flats yard","sale_date":"2026-11-28","vin":"","model_year":2019,"make":"Orlan","model":"Tessel","trim":"GT","odometer":61200,"odometer_unit":"mi","odometer_status":"actual","title":{"issued_in":"US-XX","document":"salvage","brands":null,"register_in":"US-XX"},"loss":["collision"],"condition":"starts","keys":true,"airbags_deployed":["front"]}}},"damage":{"at":2,"out":[],"in":[]},"findings":{"at":2,"out":[],"in":[]},"lines":{"at":1,"out":[],"in":[]},"risks":{"at":1,"out":[],"in":[]},"rows":{"at":0,"out":[{"id":"c1","price":1650000,"kind":"sold","date":"2026-10-02","model_year":2019,"make":"Orlan","model":"Tessel","trim":"LX","mileage":58000,"mileage_unit":"mi","title":"clear","distance":12.5,"condition":4,"note":"one owner","source":"yard list","more":{"fuel":"petrol"},"excluded":false}],"in":[]}}',0,'2026-11-20T07:30:00Z');
INSERT INTO steps VALUES(2,1,'close','{"documents":null,"damage":{"at":0,"out":null,"in":null},"findings":{"at":0,"out":null,"in":null},"lines":{"at":0,"out":null,"in":null},"risks":{"at":0,"out":null,"in":null},"rows":{"at":0,"out":null,"in":null},"build":{"head":{"before":{"outcome":"","hammer":null,"dates":{"bought":"","home":"","started":"","finished":"","inspected":"","listed":"","sold":""},"sale":{"price":null,"first_asked":null,"days":null,"brand":""},"otherwise":{"as_is":null,"part_out":null,"part_out_hours":null},"note":"","charges":null,"receipts":null,"hours":null,"risks":null,"done":null,"imported":{"as":"","row":""}},"after":{"outcome":"sold","hammer":420000,"dates":{"bought":"2026-01-01","home":"2026-01-02","started":"2026-01-03","finished":"2026-02-01","inspected":"2026-02-10","listed":"2026-02-11","sold":"2026-02-23"},"sale":{"price":1150000,"first_asked":1190000,"days":12,"brand":"rebuilt"},"otherwise":{"as_is":{"low":1,"likely":2,"high":3},"part_out":{"low":1,"likely":2,"high":3},"part_out_hours":{"low":1,"likely":2,"high":3}},"note":"n","charges":null,"receipts":null,"hours":null,"risks":null,"done":null,"imported":{"as":"7","row":"r"}}},"charges":{"at":0,"out":null,"in":[{"name":"Gate","amount":7500}]},"receipts":{"at":0,"out":null,"in":[{"date":"2026-01-05","what":"Hood","amount":18000,"kind":"part","line":"r1","source":"used","trade":"body","donor":"1ABCD23E4FG567890","file":"hood.pdf","hash":"00000000000000000000000000000000000000000000000000000000000000ff"}]},"hours":{"at":0,"out":null,"in":[{"date":"2026-01-06","trade":"body","line":"r1","hours":2.5,"what":"fit"}]},"risks":{"at":0,"out":null,"in":[{"risk":"h1","state":"found"}]},"done":{"at":0,"out":null,"in":["r1"]}}}',0,'2026-11-25T13:48:04.380852438Z');
INSERT INTO steps VALUES(2,2,'add 2 photos','{"documents":null,"damage":{"at":0,"out":null,"in":null},"findings":{"at":0,"out":null,"in":null},"lines":{"at":0,"out":null,"in":null},"risks":{"at":0,"out":null,"in":null},"rows":{"at":0,"out":null,"in":null},"photos":{"at":0,"out":null,"in":[{"hash":"0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a","kind":"jpeg","name":"IMG 1.JPG","width":4032,"height":3024,"taken":"2026-01-02","area":"12","stage":"before","caption":"grille"},{"hash":"0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b","kind":"png","name":"b.png","width":20,"height":30,"taken":"","area":"","stage":"after","caption":""}]}}',0,'2026-11-25T14:12:30.822138917Z');
CREATE TABLE surveys (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    area     TEXT    NOT NULL CONSTRAINT area CHECK (area IN ('', '01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12', 'top', 'undercarriage', 'interior', 'engine_bay', 'electrical', 'battery_pack', 'water')),
    extent   TEXT    NOT NULL CONSTRAINT extent CHECK (extent IN ('', 'minor', 'functional', 'disabling')),
    depth    TEXT    NOT NULL CONSTRAINT depth CHECK (depth IN ('', 'skin', 'bolted', 'structure')),
    note     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO surveys VALUES(1,0,'12','functional','bolted','bumper, "hood"');
INSERT INTO surveys VALUES(1,1,'undercarriage','minor','structure','');
INSERT INTO surveys VALUES(2,0,'12','functional','bolted','bumper, "hood"');
INSERT INTO surveys VALUES(2,1,'undercarriage','minor','structure','');
CREATE TABLE builds (
    lot            INTEGER PRIMARY KEY REFERENCES lots (id),
    outcome        TEXT    NOT NULL CONSTRAINT outcome CHECK (outcome IN ('', 'open', 'sold', 'parted out', 'resold as is', 'cancelled')),
    hammer         INTEGER CONSTRAINT hammer CHECK (hammer >= 0),
    bought         TEXT    NOT NULL CONSTRAINT bought CHECK (bought = '' OR bought GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    home           TEXT    NOT NULL CONSTRAINT home CHECK (home = '' OR home GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    started        TEXT    NOT NULL CONSTRAINT started CHECK (started = '' OR started GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    finished       TEXT    NOT NULL CONSTRAINT finished CHECK (finished = '' OR finished GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    inspected      TEXT    NOT NULL CONSTRAINT inspected CHECK (inspected = '' OR inspected GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    listed         TEXT    NOT NULL CONSTRAINT listed CHECK (listed = '' OR listed GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sold           TEXT    NOT NULL CONSTRAINT sold CHECK (sold = '' OR sold GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    sale_price     INTEGER CONSTRAINT sale_price CHECK (sale_price >= 0),
    first_asked    INTEGER CONSTRAINT first_asked CHECK (first_asked >= 0),
    days_on_market INTEGER CONSTRAINT days_on_market CHECK (days_on_market >= 0),
    brand          TEXT    NOT NULL,
    otherwise      TEXT    NOT NULL CONSTRAINT otherwise CHECK (json_valid(otherwise)),
    note           TEXT    NOT NULL,
    imported_as    TEXT    NOT NULL,
    imported_row   TEXT    NOT NULL
) STRICT;
INSERT INTO builds VALUES(2,'sold',420000,'2026-01-01','2026-01-02','2026-01-03','2026-02-01','2026-02-10','2026-02-11','2026-02-23',1150000,1190000,12,'rebuilt','{"as_is":{"low":1,"likely":2,"high":3},"part_out":{"low":1,"likely":2,"high":3},"part_out_hours":{"low":1,"likely":2,"high":3}}','n','7','r');
CREATE TABLE charges (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    name     TEXT    NOT NULL,
    amount   INTEGER NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO charges VALUES(2,0,'Gate',7500);
CREATE TABLE receipts (
    lot       INTEGER NOT NULL REFERENCES lots (id),
    position  INTEGER NOT NULL,
    date      TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    what      TEXT    NOT NULL,
    amount    INTEGER NOT NULL,
    kind      TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('part', 'materials', 'outside', 'freight', 'storage', 'holding', 'selling', 'other')),
    line      TEXT    NOT NULL,
    source    TEXT    NOT NULL,
    trade     TEXT    NOT NULL CONSTRAINT trade CHECK (trade IN ('', 'body', 'structure', 'mechanical', 'paint', 'electrical', 'trim')),
    donor     TEXT    NOT NULL,
    file      TEXT    NOT NULL,
    file_hash TEXT    NOT NULL CONSTRAINT file_hash CHECK (file_hash = '' OR length(file_hash) = 64 AND NOT file_hash GLOB '*[^0-9a-f]*'),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO receipts VALUES(2,0,'2026-01-05','Hood',18000,'part','r1','used','body','1ABCD23E4FG567890','hood.pdf','00000000000000000000000000000000000000000000000000000000000000ff');
CREATE TABLE hours_worked (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    date     TEXT    NOT NULL CONSTRAINT date CHECK (date = '' OR date GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    trade    TEXT    NOT NULL CONSTRAINT trade CHECK (trade IN ('body', 'structure', 'mechanical', 'paint', 'electrical', 'trim')),
    line     TEXT    NOT NULL,
    hours    REAL    NOT NULL CONSTRAINT hours CHECK (hours >= 0),
    what     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO hours_worked VALUES(2,0,'2026-01-06','body','r1',2.5,'fit');
CREATE TABLE risks_seen (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    risk     TEXT    NOT NULL,
    state    TEXT    NOT NULL CONSTRAINT state CHECK (state IN ('found', 'not there')),
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO risks_seen VALUES(2,0,'h1','found');
CREATE TABLE lines_done (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    line     TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO lines_done VALUES(2,0,'r1');
CREATE TABLE forecasts (
    prediction INTEGER PRIMARY KEY REFERENCES predictions (id),
    body       TEXT NOT NULL CONSTRAINT body CHECK (json_valid(body))
) STRICT;
INSERT INTO forecasts VALUES(2,'{"x":1}');
CREATE TABLE factors (
    id         INTEGER PRIMARY KEY AUTOINCREMENT,
    decided_at TEXT    NOT NULL,
    decision   TEXT    NOT NULL CONSTRAINT decision CHECK (decision IN ('accepted', 'refused', 'restored')),
    factor     TEXT    NOT NULL,
    words      TEXT    NOT NULL,
    before     TEXT    NOT NULL CONSTRAINT before CHECK (json_valid(before)),
    after      TEXT    NOT NULL CONSTRAINT after CHECK (json_valid(after))
) STRICT;
INSERT INTO factors VALUES(1,'2026-11-25T13:48:04.382846368Z','accepted','f','w','{}','{"a":1}');
CREATE TABLE photos (
    lot      INTEGER NOT NULL REFERENCES lots (id),
    position INTEGER NOT NULL,
    hash     TEXT    NOT NULL CONSTRAINT hash CHECK (length(hash) = 64 AND NOT hash GLOB '*[^0-9a-f]*'),
    kind     TEXT    NOT NULL CONSTRAINT kind CHECK (kind IN ('jpeg', 'png', 'webp')),
    name     TEXT    NOT NULL,
    width    INTEGER NOT NULL CONSTRAINT width CHECK (width > 0),
    height   INTEGER NOT NULL CONSTRAINT height CHECK (height > 0),
    taken    TEXT    NOT NULL CONSTRAINT taken CHECK (taken = '' OR taken GLOB '[0-9][0-9][0-9][0-9]-[0-9][0-9]-[0-9][0-9]'),
    area     TEXT    NOT NULL CONSTRAINT area CHECK (area IN ('', '01', '02', '03', '04', '05', '06', '07', '08', '09', '10', '11', '12', 'top', 'undercarriage', 'interior', 'engine_bay', 'electrical', 'battery_pack', 'water')),
    stage    TEXT    NOT NULL CONSTRAINT stage CHECK (stage IN ('before', 'after')),
    caption  TEXT    NOT NULL,
    PRIMARY KEY (lot, position)
) STRICT, WITHOUT ROWID;
INSERT INTO photos VALUES(2,0,'0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a0a','jpeg','IMG 1.JPG',4032,3024,'2026-01-02','12','before','grille');
INSERT INTO photos VALUES(2,1,'0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b0b','png','b.png',20,30,'','','after','');
CREATE TABLE IF NOT EXISTS "terms" (
    lot  INTEGER NOT NULL REFERENCES lots (id),
    part TEXT    NOT NULL CONSTRAINT part CHECK (part IN ('damage', 'findings', 'repair', 'hidden', 'resale', 'buying', 'time', 'selling', 'labour', 'market', 'rules', 'run', 'factors', 'survey', 'ways_out')),
    body TEXT    NOT NULL CONSTRAINT body CHECK (json_valid(body)),
    PRIMARY KEY (lot, part)
) STRICT, WITHOUT ROWID;
INSERT INTO terms VALUES(1,'buying','{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"name":"Buyer''s fee","mode":"whole","rows":[{"from":0,"flat":10000,"percent":"0","minimum":null,"maximum":null},{"from":100000,"flat":15000,"percent":"0.02","minimum":null,"maximum":null},{"from":500000,"flat":0,"percent":"0.08","minimum":40000,"maximum":null}]}],"fixed":[{"name":"Gate","amount":7500}],"payment_surcharge":"0.025","tax":{"rate":"0.0625","base":"hammer_and_fees"},"freight":{"low":150,"likely":180,"high":240},"storage":{"per_day":30,"free_days":3,"days":{"low":2,"likely":3,"high":6}}}');
INSERT INTO terms VALUES(1,'damage','[]');
INSERT INTO terms VALUES(1,'findings','{}');
INSERT INTO terms VALUES(1,'hidden','{"use_catalogue":false,"risks":[],"shared_loading":0}');
INSERT INTO terms VALUES(1,'labour','{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO terms VALUES(1,'market','{"rivals":4,"hammer_guess":{"low":3500,"likely":5200,"high":7500}}');
INSERT INTO terms VALUES(1,'repair','{"use_catalogue":false,"lines":[]}');
INSERT INTO terms VALUES(1,'resale','{"comparables":"","rows":[],"subject":{"trim":"LX","condition":3,"brand":"rebuilt","sale_date":"","more":null},"brand_discount":{"low":0.15,"likely":0.28,"high":0.45},"asked_to_sold":{"low":0.9,"likely":0.95,"high":1},"guess":{"low":14000,"likely":16500,"high":18500}}');
INSERT INTO terms VALUES(1,'rules','{"min_profit":150000,"min_margin":0.12,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_per_hour":4000,"max_cash":2000000,"max_days":150}');
INSERT INTO terms VALUES(1,'run','{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO terms VALUES(1,'selling','{"percent":0,"flat":250}');
INSERT INTO terms VALUES(1,'time','{"hours_per_week":30,"inspection_queue_days":{"low":7,"likely":14,"high":35},"days_to_sell":{"low":7,"likely":21,"high":60},"holding_per_day":6,"capital_rate":0.1}');
INSERT INTO terms VALUES(2,'buying','{"bid_steps":[{"from":0,"step":2500},{"from":100000,"step":5000}],"fees":[{"name":"Buyer''s fee","mode":"whole","rows":[{"from":0,"flat":10000,"percent":"0","minimum":null,"maximum":null},{"from":100000,"flat":15000,"percent":"0.02","minimum":null,"maximum":null},{"from":500000,"flat":0,"percent":"0.08","minimum":40000,"maximum":null}]}],"fixed":[{"name":"Gate","amount":7500}],"payment_surcharge":"0.025","tax":{"rate":"0.0625","base":"hammer_and_fees"},"freight":{"low":150,"likely":180,"high":240},"storage":{"per_day":30,"free_days":3,"days":{"low":2,"likely":3,"high":6}}}');
INSERT INTO terms VALUES(2,'damage','[]');
INSERT INTO terms VALUES(2,'findings','{}');
INSERT INTO terms VALUES(2,'hidden','{"use_catalogue":false,"risks":[],"shared_loading":0}');
INSERT INTO terms VALUES(2,'labour','{"rates":{"body":35,"electrical":35,"mechanical":35,"paint":35,"structure":35,"trim":35}}');
INSERT INTO terms VALUES(2,'market','{"rivals":4,"hammer_guess":{"low":3500,"likely":5200,"high":7500}}');
INSERT INTO terms VALUES(2,'repair','{"use_catalogue":false,"lines":[]}');
INSERT INTO terms VALUES(2,'resale','{"comparables":"","rows":[],"subject":{"trim":"LX","condition":3,"brand":"rebuilt","sale_date":"","more":null},"brand_discount":{"low":0.15,"likely":0.28,"high":0.45},"asked_to_sold":{"low":0.9,"likely":0.95,"high":1},"guess":{"low":14000,"likely":16500,"high":18500}}');
INSERT INTO terms VALUES(2,'rules','{"min_profit":150000,"min_margin":0.12,"max_loss_chance":0.15,"max_worst_tenth_loss":250000,"min_per_hour":4000,"max_cash":2000000,"max_days":150}');
INSERT INTO terms VALUES(2,'run','{"scenarios":4096,"seed":7,"winners_allowance":false}');
INSERT INTO terms VALUES(2,'selling','{"percent":0,"flat":250}');
INSERT INTO terms VALUES(2,'time','{"hours_per_week":30,"inspection_queue_days":{"low":7,"likely":14,"high":35},"days_to_sell":{"low":7,"likely":21,"high":60},"holding_per_day":6,"capital_rate":0.1}');
DELETE FROM sqlite_sequence;
INSERT INTO sqlite_sequence VALUES('lots',2);
INSERT INTO sqlite_sequence VALUES('predictions',2);
INSERT INTO sqlite_sequence VALUES('shop_steps',2);
INSERT INTO sqlite_sequence VALUES('factors',1);
CREATE INDEX predictions_of_lot ON predictions (lot, id);
CREATE TRIGGER predictions_never_change BEFORE UPDATE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction never changes');
END;
CREATE TRIGGER predictions_never_go BEFORE DELETE ON predictions
BEGIN
    SELECT RAISE(ABORT, 'a frozen prediction is never deleted');
END;
CREATE INDEX shop_steps_of_place ON shop_steps (place, number);
CREATE UNIQUE INDEX imported_once ON builds (imported_as) WHERE imported_as <> '';
CREATE TRIGGER forecasts_never_change BEFORE UPDATE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast never changes');
END;
CREATE TRIGGER forecasts_never_go BEFORE DELETE ON forecasts
BEGIN
    SELECT RAISE(ABORT, 'a frozen forecast is never deleted');
END;
CREATE TRIGGER factors_never_change BEFORE UPDATE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors never changes');
END;
CREATE TRIGGER factors_never_go BEFORE DELETE ON factors
BEGIN
    SELECT RAISE(ABORT, 'the history of the factors is never deleted');
END;
COMMIT;
